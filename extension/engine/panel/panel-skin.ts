import type { HeavyQuestion } from '../formula/catalogue.ts';
import { signedArea } from '../geometry/outline.ts';
import { faultProblem } from '../skin/skin-problems.ts';
import { panelKey, type SkinReply } from '../skin/skin-answer.ts';
import { panelFaults } from '../skin/panel-problems.ts';
import { readPanels } from '../skin/read-panel.ts';
import { alongLean, lipLoop } from '../skin/ring-plan.ts';
import type { SkinFigures } from '../skin/skin.ts';
import { angle, area, length, volume } from '../units/dimension.ts';
import { showQuantity } from '../units/show.ts';
import type { Answers } from '../workbook/answers.ts';
import { isMirrored } from './hands.ts';
import { levelLines, type Surface } from './level-lines.ts';
import type { PicturedPanel, PicturedRing } from './pictured-panel.ts';
import { rowViewOf } from '../workbook/row-view.ts';
import type { SkinProfile } from './section-drawing.ts';

/** What is asked to picture a skin, or the sentence why there is none. */
export type PanelSkinQuestion =
  | { readonly state: 'question'; readonly question: HeavyQuestion }
  | { readonly state: 'none'; readonly message: string };

/** The question whose answer is the skin of a panel on its hand; the functions of skins ask the same. */
export function panelSkinQuestion(panel: PicturedPanel, answers: Answers): PanelSkinQuestion {
  const read = readPanels(rowViewOf(panel.row, answers));
  const of = read[panel.hand === 'left' ? 0 : read.length - 1];
  if (of === undefined) return { state: 'none', message: `${panel.name} has no outline yet.` };
  const fault = panelFaults(of.panel)[0];
  if (!of.placed) {
    const message = `Where the rings of ${panel.name} stand is not known yet: fill in “Across” and “Up” of each.`;
    return { state: 'none', message };
  }
  if (fault !== undefined)
    return { state: 'none', message: faultProblem(fault, panel.settings).message };
  const body = { panel: of.panel };
  return {
    state: 'question',
    question: { kind: 'skin', key: panelKey(of.panel), about: of.panel.id, body },
  };
}

/** A skin as pictures draw it, in the panel's frame as it is seen on a hand; heights above the base plane. */
export interface PanelSkin extends Surface {
  /** Height of each node above the base's front, in mm. */
  readonly heights: readonly number[];
  /** How many times its own length the covering is stretched at each node. */
  readonly stretch: readonly number[];
  /** Outline of the base and lips of the rings. */
  readonly edges: readonly Surface['points'][];
  readonly figures: SkinFigures;
}

/** Figures of triangles as figures of their nodes: the mean over those that meet there. */
function atNodes(values: Float32Array, triangles: Uint32Array, count: number): readonly number[] {
  const [sums, counts] = [new Float64Array(count), new Float64Array(count)];
  triangles.forEach((node, index) => {
    sums[node] = (sums[node] ?? 0) + (values[Math.floor(index / 3)] ?? 1);
    counts[node] = (counts[node] ?? 0) + 1;
  });
  return Array.from(sums, (sum, node) => (counts[node] === 0 ? 1 : sum / (counts[node] ?? 1)));
}

function edgesOf(panel: PicturedPanel, sign: 1 | -1): readonly Surface['points'][] {
  const { outline, thickness, rings } = panel;
  const closed = (points: readonly { x: number; y: number; z: number }[]): readonly number[] =>
    [...points, ...points.slice(0, 1)].flatMap(({ x, y, z }) => [sign * x, y, z]);
  return [
    closed(outline.points.map(({ x, y }) => ({ x, y, z: thickness }))),
    ...rings.map(({ ring }) => {
      const { points, heights } = lipLoop(ring, 0.5);
      return closed(points.map(({ x, y }, index) => ({ x, y, z: heights[index] ?? 0 })));
    }),
  ];
}

/** The skin that was worked out; undefined where it did not come to rest. */
export function panelSkin(panel: PicturedPanel, reply: SkinReply): PanelSkin | undefined {
  const { picture, figures } = reply;
  if (picture === undefined || figures === undefined) return undefined;
  const sign = isMirrored(panel.hand) ? -1 : 1;
  const points = Array.from(picture.heights).flatMap((height, node) => [
    sign * (picture.points[2 * node] ?? 0),
    picture.points[2 * node + 1] ?? 0,
    height + panel.thickness,
  ]);
  // Lids are cut open in the end: what is left is the skin.
  const triangles = Array.from(picture.triangles).filter(
    (_, index) => picture.regions[Math.floor(index / 3)] === 0,
  );
  return {
    points,
    triangles,
    heights: Array.from(picture.heights),
    stretch: atNodes(picture.stretch, picture.triangles, picture.heights.length),
    edges: edgesOf(panel, sign),
    figures,
  };
}

/** The skin where a ring's section cuts it. */
export function skinProfile(
  skin: PanelSkin,
  pictured: PicturedRing,
  panel: PicturedPanel,
): SkinProfile {
  const sign = isMirrored(panel.hand) ? -1 : 1;
  const place = (x: number, y: number) => alongLean(pictured.ring, { x: sign * x, y });
  const across = (node: number): number =>
    place(skin.points[3 * node] ?? 0, skin.points[3 * node + 1] ?? 0).across;
  return levelLines(skin, across, 0).map((line) =>
    line.map(({ x, y, z }) => ({ x: place(x, y).along, y: z })),
  );
}

/** A skin in sentences, with the figures that a bench asks for. */
export function skinWords(
  panel: PicturedPanel,
  { figures, heights }: PanelSkin,
): readonly string[] {
  const shown = (base: number, dimension: typeof length): string =>
    showQuantity({ base, dimension }, panel.settings).text;
  const highest = heights.reduce((most, one) => Math.max(most, one), 0);
  const share = figures.skin / Math.max(1, signedArea(panel.outline.points));
  const hugs = figures.hugs.map(({ ring }) => {
    return panel.rings.find(({ row }) => row.id === ring)?.name ?? ring;
  });
  return [
    `Skin of ${panel.name}: ${shown(figures.skin, area)} from the outline to the lips, ± ${shown(figures.skinError, area)}; ${share.toFixed(2)} times the base.`,
    `It rises to ${shown(highest, length)} above the base, at most ${shown(figures.slope, angle)} steep, over a volume of ${shown(figures.volume, volume)}.`,
    `The covering comes from a blank of ${shown(figures.blankLength, length)} by ${shown(figures.blankWidth, length)} without allowances; its most stretched part reaches at least ${figures.stretch.toFixed(2)} times as far as its least stretched.`,
    ...(hugs.length === 0 ? [] : [`The cloth lies against the wall of ${hugs.join(', ')}.`]),
  ];
}
