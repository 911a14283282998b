import type { Problem } from '../../problems.ts';
import { angle, length } from '../../units/dimension.ts';
import { showShape } from '../../geometry/shape-text.ts';
import { leanOf } from '../../skin/panel.ts';
import { ringOf } from '../../skin/read-panel.ts';
import { isInCorner } from '../../skin/ring-plan.ts';
import { loneView } from '../../workbook/row-view.ts';
import { ringOutline, ringBuilds } from '../../trade/rings.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { baseIn, nameOf, placeOf, shapeIn, wordIn } from '../cells.ts';
import { linked, shown } from './trap-cells.ts';
import { trapProblem } from './trap-problems.ts';
import type { Trap, TrapView } from './trap.ts';

// Below half a degree an oval lip differs from a round one by less than a saw cut wanders.
const leastTilt = Math.PI / 360;

interface Leaning {
  readonly size: number;
  readonly tilt: number;
  readonly build: string;
}

function leaning(row: AnsweredRow): Leaning | undefined {
  const [size, tilt] = [baseIn(row, 'size', length), baseIn(row, 'tilt', angle)];
  const build = wordIn(row, 'build');
  if (size === undefined || tilt === undefined || tilt < leastTilt) return undefined;
  return { size, tilt, build };
}

/** How much longer the strip of a round baffle is than the one of this build, mm. */
function stripMore({ size, tilt, build }: Leaning): number {
  const shape = { kind: 'circle', diameter: size } as const;
  const known = ringBuilds.find((one) => one === build) ?? 'round_baffle';
  const outline = (of: typeof known): number => ringOutline({ shape, tilt, build: of });
  return outline('round_baffle') - outline(known);
}

function bentRing(row: AnsweredRow, { settings }: TrapView): readonly Problem[] {
  if (row.kind !== 'ring') return [];
  const ring = leaning(row);
  if (ring === undefined || ring.build === 'round_baffle') return [];
  const { size, tilt, build } = ring;
  const more = stripMore(ring);
  const through = (base: number): string => shown(base, length, { settings });
  const details = {
    row: nameOf(row),
    build,
    tilt: shown(tilt, angle, { settings }),
    lip: `${through(size / Math.cos(tilt))} × ${through(size)}`,
    strip: through(Math.abs(more)),
    direction: more < 0 ? 'shorter' : 'longer',
  };
  const place = placeOf(row, 'build');
  return build === 'round_tube'
    ? [trapProblem('ring-build-unfit', details, { severity: 'warning', place })]
    : [trapProblem('ring-build-wall', details, { severity: 'note', place })];
}

function uprightTube(row: AnsweredRow, { settings }: TrapView): readonly Problem[] {
  if (row.kind !== 'tube_ring' && row.kind !== 'stacked_ring') return [];
  const ring = leaning(row);
  if (ring?.build !== 'round_baffle') return [];
  const rise = (share: number): string => shown(ring.size * share, length, { settings });
  const details = {
    row: nameOf(row),
    wrong: rise(Math.sin(ring.tilt)),
    right: rise(Math.tan(ring.tilt)),
  };
  const place = placeOf(row, 'build');
  return [trapProblem('tube-build-unfit', details, { severity: 'warning', place })];
}

function roundBaffle(row: AnsweredRow, view: TrapView): readonly Problem[] {
  const round = row.cell('shape').origin === 'typed' && shapeIn(row, 'shape')?.kind === 'circle';
  if (row.kind !== 'baffle' || !round) return [];
  const ring = linked(row, 'on', { table: 'part', view });
  if (ring === undefined || leaning(ring)?.build !== 'round_tube') return [];
  const shape = shapeIn(ring, 'mouth');
  if (shape?.kind !== 'oval') return [];
  const through = (base: number): string => shown(base, length, { settings: view.settings });
  const details = {
    row: nameOf(row),
    ring: nameOf(ring),
    mouth: `${through(shape.length)} × ${through(shape.width)}`,
  };
  const place = placeOf(row, 'shape');
  return [trapProblem('baffle-round-in-oval', details, { severity: 'warning', place })];
}

/** The lap of a seam does not lie in a corner: it would have to bend to the corner's own radius. */
function seamInCorner(row: AnsweredRow, { settings }: TrapView): readonly Problem[] {
  const turn = row.kind === 'ring' ? baseIn(row, 'seam', angle) : undefined;
  const ring = turn === undefined ? undefined : ringOf(loneView(row));
  if (turn === undefined || ring === undefined || !isInCorner(ring, leanOf(turn))) return [];
  const details = {
    row: nameOf(row),
    seam: shown(turn, angle, { settings }),
    shape: showShape(ring.shape, settings),
    side: shown(baseIn(row, 'turn', angle) ?? 0, angle, { settings }),
  };
  return [
    trapProblem('ring-seam-corner', details, { severity: 'warning', place: placeOf(row, 'seam') }),
  ];
}

/** Tilted rings of the wrong build: a round baffle and an upright tube have different lips. */
export const ringTraps: readonly Trap[] = [
  { tables: ['part'], find: bentRing },
  { tables: ['part'], find: uprightTube },
  { tables: ['part'], find: roundBaffle },
  { tables: ['part'], find: seamInCorner },
];
