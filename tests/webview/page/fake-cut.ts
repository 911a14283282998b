import type { CutView, CutWish } from '../../../extension/protocol/cut-view.ts';

/** A sheet with one part on it. */
export function cutView(wish: CutWish): CutView {
  const part = {
    kind: 'line' as const,
    role: 'outline',
    at: [0, 0, 600, 0, 600, 400, 0, 400],
    ...{ closed: true, filled: true, holes: [], arrow: false },
    row: 'part/ring_1',
    owner: 'part/ring_1',
  };
  return {
    wish: { ...wish, line: wish.line === '' ? 'board' : wish.line },
    lines: [
      { value: 'board', label: 'Panel board, 3 mm' },
      { value: 'mdf', label: 'MDF, 12 mm' },
    ],
    sheets: [{ value: '0', label: 'Sheet 1' }],
    title: 'Panel board, 3 mm, sheet 1 of 1',
    message: '',
    facts: ['laid out: 1 sheet, 20 % of it becomes parts', 'fewer than 1 is impossible'],
    words: ['Midbass ring: 600 mm × 400 mm at 0 mm along, 0 mm across.'],
    drawing: { box: { left: 0, bottom: 0, right: 1220, top: 610 }, marks: [part] },
    rows: { 'part/ring_1': 'Midbass ring' },
    lockable: true,
    locked: wish.sheet === 0 && wish.line === 'mdf' ? ['part/ring_1'] : [],
    // The other board is still being laid out.
    settling: wish.line === 'mdf',
    about: `layout ${wish.line}`,
  };
}
