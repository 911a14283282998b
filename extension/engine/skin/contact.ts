import type { FunctionContext, FunctionEntry } from '../formula/catalogue.ts';
import { ok } from '../result.ts';
import { length } from '../units/dimension.ts';
import { showQuantity } from '../units/show.ts';
import { columnsStanding, panelColumns, readPanels, type ReadPanel } from './read-panel.ts';
import { skinAnswer } from './skin-answer.ts';
import type { SkinFigures } from './skin.ts';

/** Begins the sentence about rings that the mesh cannot place. */
export const unplacedWords = 'by formula ';
/** Begins the sentence about a skin that the mesh gave no answer to. */
export const unsettledWords = 'did not come to rest ';
/** Stands before the id of a ring against whose wall the cloth lies. */
export const wallWords = 'lies on the wall of ';
/** Stands before the id of what the cloth bears on under its lip. */
export const bearsWords = 'bears on ';

/** How near a figure of the formula is, as a percentage. */
function within({ skin, skinError }: SkinFigures): string {
  return `(within ${String(Math.round((100 * skinError) / skin))} %)`;
}

function wordsOf(read: ReadPanel, context: FunctionContext): readonly string[] {
  const answer = skinAnswer(read, context);
  if (answer.state === 'fault') return [];
  const { figures, by } = answer;
  const rings = read.panel.rings.map(({ id }) => id).join(', ');
  if (by === 'formula-unplaced')
    return [`${unplacedWords}${within(figures)}, as these have no place yet: ${rings}`];
  if (by === 'formula-unsettled')
    return [`${unsettledWords}on its mesh; by formula ${within(figures)} over ${rings}`];
  const hugs = figures.hugs.map((hug) => {
    const along = showQuantity({ base: hug.length, dimension: length }, context.settings).text;
    return `${wallWords}${hug.ring} along ${along}`;
  });
  return [...hugs, ...figures.bears.map((id) => `${bearsWords}${id}`)];
}

/** SKIN.CONTACT: where the cloth touches more than lips and edges. */
export const skinContact: FunctionEntry = {
  name: 'SKIN.CONTACT',
  group: 'skin',
  help: 'Where the cloth lies against walls or bears on blocks, in words; empty where it touches lips and edges only.',
  parameters: [
    { name: 'part', help: 'The base; everything that lies on it counts.', type: { kind: 'row' } },
  ],
  result: { kind: 'text' },
  example: { formula: '=SKIN.CONTACT(base)', shows: 'lies on the wall of mid_ring along 6 in' },
  source:
    'the relaxed least-area problem: cloth lies flat against an upright wall higher than r·acosh(R/r)',
  rows: {
    reads: panelColumns,
    standing: columnsStanding,
    run: (row, _, context) =>
      ok({
        kind: 'text',
        text: [...new Set(readPanels(row).flatMap((read) => wordsOf(read, context)))].join('; '),
      }),
  },
};
