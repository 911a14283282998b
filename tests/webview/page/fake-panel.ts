import type {
  PanelView,
  PanelWish,
  PictureLine,
  PictureMark,
  SkinView,
} from '../../../extension/protocol/panel-view.ts';
import type { FakeRow } from './fake-job.ts';

export const fakeSvg = '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm"/>';

/** Millimetres in a text of the made-up job: `12.7 mm`. */
function place(row: FakeRow | undefined, column: string): number {
  return Number.parseFloat(row?.cells[column] ?? '0');
}

function square(x: number, y: number, half: number): readonly number[] {
  return [x - half, y - half, x + half, y - half, x + half, y + half, x - half, y + half];
}

function area(role: string, at: readonly number[], row: string, owner = row): PictureLine {
  return {
    kind: 'line',
    role,
    at,
    closed: true,
    filled: true,
    holes: [],
    arrow: false,
    row,
    owner,
  };
}

function planMarks(x: number, y: number): readonly PictureMark[] {
  return [
    area('outline', [-300, -200, 300, -200, 300, 200, -300, 200], 'part/base'),
    area('ring', square(x, y, 100), 'part/ring_1'),
    area('baffle', square(x, y, 90), 'part/baffle_2', 'part/ring_1'),
    {
      ...area('aim', [x, y, x + 80, y], 'part/ring_1'),
      closed: false,
      filled: false,
      arrow: true,
    },
    ...[0, 1].map((): PictureMark => ({
      kind: 'text',
      role: 'dimension',
      at: [0, -230],
      text: '600 mm',
      height: 0,
      anchor: 'middle',
      angle: 0,
      row: '',
      owner: '',
    })),
  ];
}

/** A tent of four triangles. */
export const fakeSkin: SkinView = {
  points: [-100, -100, 0, 100, -100, 0, 100, 100, 0, -100, 100, 0, 0, 0, 50],
  triangles: [0, 1, 4, 1, 2, 4, 2, 3, 4, 3, 0, 4],
  edges: [[-100, -100, 0, 100, -100, 0]],
  scales: [
    {
      key: 'height',
      label: 'Height over the base',
      values: [0, 0, 0, 0, 50],
      least: 0,
      most: 50,
      ticks: ['0 mm', '25 mm', '50 mm'],
    },
    {
      key: 'stretch',
      label: 'Stretch',
      values: [1, 1, 1, 1, 1.2],
      least: 1,
      most: 1.2,
      ticks: ['0 %', '10 %', '20 %'],
    },
  ],
};

/** A base with one ring, of which only the plan and the skin can be drawn. */
export function panelView(rows: readonly FakeRow[], wish: PanelWish): PanelView {
  const ring = rows.find((row) => row.id === 'ring_1');
  const [x, y] = [place(ring, 'at_x'), place(ring, 'at_y')];
  const { picture } = wish;
  const box = { left: -300, bottom: -240, right: 300, top: 200 };
  return {
    wish: { ...wish, base: 'base', ring: 'ring_1' },
    bases: [{ value: 'base', label: 'Base 0' }],
    hands: [
      { value: 'drawn', label: 'As placed' },
      { value: 'left', label: 'Left' },
    ],
    rings: [{ value: 'ring_1', label: 'Ring 1' }],
    title: `Base 0: ${picture}`,
    words: [`Ring 1 stands at ${String(x)} mm.`],
    message: picture === 'plan' || picture === 'skin' ? '' : 'Nothing stands on it yet.',
    drawing: picture === 'plan' ? { box, marks: planMarks(x, y) } : undefined,
    skin: picture === 'skin' ? fakeSkin : undefined,
    rows: {
      'part/base': 'Base 0, base',
      'part/ring_1': 'Ring 1, ring',
      'part/baffle_2': 'Baffle 2, baffle',
    },
    movables: [{ row: 'part/ring_1', x, y, held: '' }],
    step: 1,
    mirrored: wish.hand === 'left',
    file: 'base-plan',
  };
}
