import type { Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { linePoints, roughSize, type DrawnFile, type DrawnLine } from './drawn-file.ts';
import { joinedLoops, joinMm, type JoinFault } from './join-lines.ts';
import type { Point } from './outline.ts';
import { outlineProblem } from './outline-problems.ts';
import { outlineSizeFault } from './outline-size.ts';
import { lengthWords, placeWords } from './outline-words.ts';
import { soundOutline, type LoopFault } from './sound-outline.ts';
import { traced, type TracedOutline } from './traced-outline.ts';

/** Which outline of a drawing is wanted, and how it is spoken of. */
export interface WantedOutline {
  readonly address: string;
  readonly file: string;
  readonly name: string | undefined;
  /** Size of one unit of the drawing, in mm; undefined where the drawing must say it. */
  readonly unit: number | undefined;
  readonly settings: UnitSettings;
}

/** Curves become straight pieces that stray at most this far, in mm. */
const finestMm = 0.01;

/** Those of small parts stray less: this share of their size. */
const finestShare = 1e-5;

/** Names that a problem lists at most. */
const mostNames = 8;

function whatOf({ file, name }: WantedOutline): string {
  return name === undefined ? file : `“${name}” in ${file}`;
}

/** The lines asked for by name: exactly, else in whatever case. */
function linesNamed({ lines }: DrawnFile, name: string | undefined): readonly DrawnLine[] {
  if (name === undefined) return lines;
  const exact = lines.filter(({ names }) => names.includes(name));
  if (exact.length > 0) return exact;
  const lower = name.toLowerCase();
  return lines.filter(({ names }) => names.some((one) => one.toLowerCase() === lower));
}

/** What is wrong with a loop, in words. */
export function faultProblem(
  fault: JoinFault | LoopFault,
  what: string,
  settings: UnitSettings,
): Problem {
  switch (fault.kind) {
    case 'open':
      return outlineProblem('outline-open', {
        what,
        from: placeWords(fault.from, settings),
        to: placeWords(fault.to, settings),
        gap: lengthWords(fault.gap, settings),
      });
    case 'without-area':
      return outlineProblem('outline-without-area', { what });
    default:
      return outlineProblem(`outline-${fault.kind}`, { what, at: placeWords(fault.at, settings) });
  }
}

function severalProblem(
  drawn: DrawnFile,
  lines: readonly DrawnLine[],
  wanted: WantedOutline,
  count: number,
): Problem {
  const { file, name } = wanted;
  const others = lines.flatMap(({ names }) => names).find((one) => one !== name);
  const details = { what: whatOf(wanted), count, word: drawn.nameWord, file };
  return outlineProblem('outline-several', { ...details, name: others ?? 'left' });
}

function nothingProblem(drawn: DrawnFile, wanted: WantedOutline): Problem {
  const { unread, nameWord } = drawn;
  const { file, name } = wanted;
  const names = [...new Set(drawn.lines.flatMap((line) => line.names))];
  if (name === undefined || names.length === 0) {
    const passed = unread.length === 0 ? '' : `; it has ${unread.join(', ')}, which are not read`;
    return outlineProblem('outline-empty', { what: whatOf(wanted), unread: passed });
  }
  const listed = names.length > mostNames ? [...names.slice(0, mostNames), '…'] : names;
  const details = { file, word: nameWord, name, names: listed.join(', ') };
  return outlineProblem('outline-name-unknown', details);
}

/** Where a loop begins that lies upon the first one: the same line drawn twice. */
function twinOf(outline: TracedOutline, loops: readonly (readonly Point[])[]): Point | undefined {
  const near = (one: number, two: number): boolean => Math.abs(one - two) <= joinMm;
  const twin = loops.find((loop) => {
    const sound = soundOutline(loop);
    if ('kind' in sound) return false;
    const { box, perimeter } = traced(sound);
    const sides = ['left', 'right', 'bottom', 'top'] as const;
    return (
      near(perimeter, outline.perimeter) && sides.every((key) => near(box[key], outline.box[key]))
    );
  });
  return twin?.[0];
}

/** The one outline of a drawing that is wanted, in mm, or what is wrong with it and where. */
export function outlineInDrawing(drawn: DrawnFile, wanted: WantedOutline): Result<TracedOutline> {
  const { address, file, name, settings } = wanted;
  const what = whatOf(wanted);
  const lines = linesNamed(drawn, name);
  if (lines.length === 0) return failed(nothingProblem(drawn, wanted));
  const unit = wanted.unit ?? drawn.unit;
  if (unit === undefined) return failed(outlineProblem('outline-without-unit', { file, address }));
  const tolerance = Math.min(finestMm / unit, finestShare * roughSize(lines));
  const scaled = lines.map((line) => ({
    closed: line.closed,
    points: linePoints(line, tolerance).map(({ x, y }) => ({ x: x * unit, y: y * unit })),
  }));
  const loops = joinedLoops(scaled);
  if ('kind' in loops) return failed(faultProblem(loops, what, settings));
  const [first = [], ...others] = loops;
  const sound = soundOutline(first);
  if ('kind' in sound) return failed(faultProblem(sound, what, settings));
  const outline = traced(sound);
  const twin = twinOf(outline, others);
  if (twin !== undefined) {
    return failed(faultProblem({ kind: 'doubled', at: twin }, what, settings));
  }
  if (others.length > 0) return failed(severalProblem(drawn, lines, wanted, loops.length));
  const size = outlineSizeFault(outline, { what, settings, address });
  return size === undefined ? ok(outline) : failed(size);
}
