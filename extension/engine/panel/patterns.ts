import type { AnsweredRow } from '../workbook/answers.ts';
import { basePattern } from './base-pattern.ts';
import type { Hand } from './hands.ts';
import { partPatterns } from './part-patterns.ts';
import type { Pattern } from './pattern-marks.ts';
import { handsOf, picturedBases, picturedPanel, type PanelSource } from './pictured-panel.ts';
import { ringPattern } from './ring-pattern.ts';

/** Hands that a base is cut for: of a pair both, else the one it is drawn as. */
function handsCut(base: AnsweredRow, { answers }: PanelSource): readonly Hand[] {
  const hands = handsOf(base, answers).filter((hand) => hand !== 'drawn');
  return hands.length === 0 ? ['drawn'] : hands;
}

function isOver(row: AnsweredRow, base: AnsweredRow, { answers }: PanelSource): boolean {
  return answers.under(row).some((one) => one.id === base.id && one.table === base.table);
}

function ofBase(base: AnsweredRow, source: PanelSource): readonly Pattern[] {
  const hands = handsCut(base, source);
  const pictured = hands.flatMap((hand) => {
    const panel = picturedPanel(base, hand, source);
    return panel === undefined ? [] : [{ hand, panel }];
  });
  const bases = pictured.flatMap(({ hand, panel }) => basePattern(base, hand, source, panel) ?? []);
  // A ring of both hands is bent from the same strip.
  const rings = new Map(
    pictured.flatMap(({ panel }) =>
      panel.rings.map((ring) => [ring.row.id, { ring, panel }] as const),
    ),
  );
  const parts = source.answers
    .rows('part')
    .filter((row) => isOver(row, base, source) && !rings.has(row.id))
    .flatMap((row) => partPatterns(row, hands, source));
  return [
    ...bases,
    ...[...rings.values()].map(({ ring, panel }) => ringPattern(ring, panel)),
    ...parts,
  ];
}

/**
 * Patterns of everything in a job that is cut to a form, at full size: bases, rings' strips, baffles,
 * grille frames, blanks of cloth and covering; of a pair both hands.
 */
export function jobPatterns(source: PanelSource): readonly Pattern[] {
  const all = picturedBases(source).flatMap((base) => ofBase(base, source));
  // A name is given once, so that no file is written over another.
  const named = new Map(all.map((pattern) => [pattern.drawing.id, pattern]));
  return [...named.values()];
}
