import type { FunctionContext, HeavyAnswers, HeavyQuestion } from '../formula/catalogue.ts';
import { closedFigures } from './closed-form.ts';
import type { Panel } from './panel.ts';
import { buildFaults, panelFaults, type PanelFault } from './panel-problems.ts';
import type { ReadPanel } from './read-panel.ts';
import type { SkinFigures } from './skin.ts';

/** What a worker is asked about a panel, and what it says. */
export interface SkinQuestion {
  readonly panel: Panel;
}
export interface SkinReply {
  /** Absent where the skin did not come to rest. */
  readonly figures?: SkinFigures;
  readonly picture?: SkinPicture;
}

/** The mesh of a skin as pictures draw it; lengths in mm above the base's front. */
export interface SkinPicture {
  /** x, y of each node. */
  readonly points: Float32Array;
  readonly heights: Float32Array;
  readonly triangles: Uint32Array;
  /** For each triangle 0 on the skin, n + 1 on the lid of ring n. */
  readonly regions: Int16Array;
  /** For each triangle the larger stretch of the blank to the surface. */
  readonly stretch: Float32Array;
}

/** What is known of a panel's skin now. */
export type SkinAnswer =
  | { readonly state: 'fault'; readonly fault: PanelFault }
  /** How the figures were come by: by mesh, by formula for now, or by formula because no mesh can tell. */
  | { readonly state: 'figures'; readonly figures: SkinFigures; readonly by: SkinMeans };

export type SkinMeans = 'mesh' | 'formula' | 'formula-unplaced' | 'formula-unsettled';

const outlineKeys = new WeakMap<object, string>();

/** A short word that stands for an outline: a sum over its coordinates' digits. */
function outlineKey(outline: Panel['outline']): string {
  const known = outlineKeys.get(outline);
  if (known !== undefined) return known;
  let [a, b] = [0x811c9dc5, 0x1b873593];
  for (const { x, y } of outline.points) {
    for (const value of [x, y]) {
      const digits = Math.round(value * 1e4);
      a = Math.imul(a ^ digits, 0x01000193);
      b = Math.imul(b ^ (digits >>> 7) ^ digits, 0x85ebca6b);
    }
  }
  const { length } = outline.points;
  const key = `${String(length)}:${(a >>> 0).toString(36)}${(b >>> 0).toString(36)}`;
  outlineKeys.set(outline, key);
  return key;
}

const panelKeys = new WeakMap<Panel, string>();

/** A text that two panels share exactly when their skins are the same. */
export function panelKey(panel: Panel): string {
  const known = panelKeys.get(panel) ?? freshKey(panel);
  panelKeys.set(panel, known);
  return known;
}

function freshKey(panel: Panel): string {
  const { outline, thickness, rings, blocks, limits, build } = panel;
  const levels = [...blocks, ...limits].map((one) => [one.id, outlineKey(one.outline), one.height]);
  return JSON.stringify([
    panel.id,
    outlineKey(outline),
    thickness,
    rings,
    levels,
    limits.length,
    build,
  ]);
}

/** Panels whose faults and closed forms were worked out last; an edit seldom moves more than one. */
const known = new Map<
  string,
  { readonly faults: readonly PanelFault[]; readonly closed: SkinFigures }
>();
const mostKnown = 400;

function lookedAt(key: string, { panel, placed }: Pick<ReadPanel, 'panel' | 'placed'>) {
  const before = known.get(key);
  if (before !== undefined) return before;
  const faults = placed ? panelFaults(panel) : buildFaults(panel);
  const made = { faults, closed: closedFigures(panel) };
  if (known.size >= mostKnown) known.clear();
  known.set(key, made);
  return made;
}

/**
 * A closed form put right by how far it was off for this panel when its mesh was last worked out: one
 * step of a depth then moves the figures by what the step does, not by the error of the formula too.
 */
function corrected(closed: SkinFigures, was: SkinFigures, before: SkinFigures): SkinFigures {
  const put = (now: number, then: number, truly: number): number =>
    then > 0 && Number.isFinite(truly) ? (now * truly) / then : now;
  const keys = ['skin', 'volume', 'stretch', 'blankLength', 'blankWidth', 'slope'] as const;
  const figures = keys.map((key) => [key, put(closed[key], was[key], before[key])] as const);
  return { ...closed, ...Object.fromEntries(figures) };
}

function estimated(
  closed: SkinFigures,
  question: HeavyQuestion,
  heavy: HeavyAnswers | undefined,
): SkinFigures {
  const last = heavy?.before(question);
  if (last === undefined || !isReply(last.answer)) return closed;
  const { panel } = last.question.body as SkinQuestion;
  const { figures } = last.answer;
  if (figures === undefined) return closed;
  const was = lookedAt(last.question.key, { panel, placed: true }).closed;
  return corrected(closed, was, figures);
}

function isReply(answer: unknown): answer is SkinReply {
  return typeof answer === 'object' && answer !== null;
}

/**
 * What is known of a panel's skin: why there is none, the figures of the mesh where they have been
 * worked out, else those of the closed form; and then the question is asked.
 */
export function skinAnswer(read: ReadPanel, context: FunctionContext): SkinAnswer {
  const key = `${panelKey(read.panel)}${read.placed ? '' : ' unplaced'}`;
  const { faults, closed } = lookedAt(key, read);
  const [fault] = faults;
  if (fault !== undefined) return { state: 'fault', fault };
  if (!read.placed) {
    context.heavy?.rough?.();
    return { state: 'figures', figures: closed, by: 'formula-unplaced' };
  }
  const body: SkinQuestion = { panel: read.panel };
  const question: HeavyQuestion = { kind: 'skin', key, about: read.panel.id, body };
  const reply = context.heavy?.answer(question);
  if (isReply(reply)) {
    if (reply.figures !== undefined)
      return { state: 'figures', figures: reply.figures, by: 'mesh' };
    context.heavy?.rough?.();
    return { state: 'figures', figures: closed, by: 'formula-unsettled' };
  }
  return { state: 'figures', figures: estimated(closed, question, context.heavy), by: 'formula' };
}
