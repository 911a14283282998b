import { describe, expect, test } from 'vitest';
import type { CompareChange, CompareView } from '../../../extension/protocol/compare-view.ts';
import { ComparePane } from '../../../webview/panes/compare.ts';

const lean: CompareChange = {
  kind: 'changed',
  table: 'part',
  id: 'ring',
  occurrence: 0,
  column: 'tilt',
  there: true,
  place: 'Ring: lean',
  before: '15 deg',
  after: '',
  effect: 'alone +7.69 USD before tax',
  told: 'was 15 deg',
};
const gone: CompareChange = {
  ...lean,
  kind: 'removed',
  id: 'badge',
  column: '',
  there: false,
  place: 'Badge',
  after: 'row taken out',
  effect: '',
};
const added: CompareChange = { ...gone, kind: 'added', id: 'trim', there: true, place: 'Trim' };

const view: CompareView = {
  against: 'HEAD',
  note: '',
  figures: [
    { label: 'Price', before: '10.00 USD', after: '17.69 USD', change: '+7.69 USD' },
    { label: 'Tax', before: '1.00 USD', after: '1.00 USD', change: '' },
    { label: 'Total', before: '11.00 USD', after: '10.00 EUR', change: '' },
  ],
  changes: [lean, gone, added],
  followers: ['Cloth skin: need 2 sqft → 3 sqft'],
};

function painted(shown: CompareView | undefined): ComparePane {
  const pane = new ComparePane();
  pane.paint(shown);
  return pane;
}

function texts(pane: ComparePane, selector: string): readonly string[] {
  return [...pane.root.querySelectorAll(selector)].map((one) => one.textContent);
}

describe('paint', () => {
  test('each change says where, from what to what, and what it did', () => {
    const lines = texts(painted(view), '.compare-change');
    expect(lines[0]).toBe('~Ring: lean, changed: 15 deg → (blank)alone +7.69 USD before tax');
    expect(lines[1]).toContain('Badge, removed: row taken out');
  });

  test('a row that is gone is no button: there is nowhere to go', () => {
    const pane = painted(view);
    expect(texts(pane, 'button[data-action="go-change"]')).toHaveLength(2);
    expect(pane.root.querySelector('.compare-gone')?.textContent).toContain('Badge');
  });

  test('figures that stayed are left out; two currencies are shown without a difference', () => {
    expect(
      texts(painted(view), '.compare-figures tbody th, .compare-figures th[scope="row"]'),
    ).toEqual(expect.arrayContaining(['Price', 'Total']));
    expect(texts(painted(view), 'th[scope="row"]')).not.toContain('Tax');
  });

  test('rows that follow without being touched have a list of their own', () => {
    expect(texts(painted(view), '.compare-followers li')).toEqual(view.followers);
    expect(texts(painted({ ...view, followers: [] }), 'h3')).toEqual([]);
  });

  test('the title counts, and a note is shown where there is one', () => {
    expect(texts(painted(view), '.compare-title')).toEqual(['Compared with HEAD: 3 changes']);
    const one = painted({ ...view, changes: [lean], note: 'Figures may move.' });
    expect(texts(one, '.compare-title')).toEqual(['Compared with HEAD: 1 change']);
    expect(texts(one, '.compare-note')).toEqual(['Figures may move.']);
    const none = painted({ ...view, changes: [] });
    expect(texts(none, '.compare-title')).toEqual(['Compared with HEAD: no cell differs']);
  });

  test('without a comparison it says how to begin one', () => {
    expect(painted(undefined).root.textContent).toContain('“Compare with HEAD”');
  });
});

describe('step', () => {
  test('goes round and round, past what is gone', () => {
    const pane = painted(view);
    expect(pane.step(1)).toBe(lean);
    expect(pane.step(1)).toBe(added);
    expect(pane.step(1)).toBe(lean);
    expect(pane.step(-1)).toBe(added);
  });

  test('goes on from the change that was clicked, and begins anew with the next comparison', () => {
    const pane = painted(view);
    expect(pane.choose(2)).toBe(added);
    expect(pane.step(1)).toBe(lean);
    pane.paint(undefined);
    expect(pane.step(1)).toBeUndefined();
    pane.paint(view);
    expect(pane.step(-1)).toBe(added);
  });
});
