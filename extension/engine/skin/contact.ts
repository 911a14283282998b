import type { FunctionContext, FunctionEntry, RowView } from '../formula/catalogue.ts';
import { ok } from '../result.ts';
import { length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import { panelColumns, readPanels } from './read-panel.ts';
import { skinAnswer } from './skin-answer.ts';

/** Begins the sentence about rings that the mesh cannot place. */
export const unplacedWords = 'by formula, as these have no place yet: ';
/** Stands before the id of a ring against whose wall the cloth lies. */
export const wallWords = 'lies on the wall of ';
/** Stands before the id of what the cloth bears on under its lip. */
export const bearsWords = 'bears on ';

function wordsFor(row: RowView, context: FunctionContext): readonly string[] {
  const settings: UnitSettings = context.settings;
  const words = new Set<string>();
  for (const read of readPanels(row)) {
    if (!read.placed) {
      words.add(`${unplacedWords}${read.panel.rings.map(({ id }) => id).join(', ')}`);
      continue;
    }
    const answer = skinAnswer(read, context);
    if (answer.state === 'fault') continue;
    const { hugs, bears } = answer.figures;
    for (const hug of hugs) {
      const along = showQuantity({ base: hug.length, dimension: length }, settings).text;
      words.add(`${wallWords}${hug.ring} along ${along}`);
    }
    for (const id of bears) words.add(`${bearsWords}${id}`);
  }
  return [...words];
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
    run: (row, _, context) => ok({ kind: 'text', text: wordsFor(row, context).join('; ') }),
  },
};
