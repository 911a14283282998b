import type { Problem } from '../problems.ts';
import { blockProblems, mayHaveProblems, type ProblemContext } from './block-problems.ts';
import { censusAfter, takeCensus, type BlockCensus } from './block-census.ts';
import { buildRows, replaceRows, samePlace, type BuiltRows } from './build-rows.ts';
import { fileProblem } from './file-problems.ts';
import type { ParsedBlock } from './parse-block.ts';
import { settingsOf } from './settings.ts';
import type { Block, FileReading, SourceCell, TextChange } from './source.ts';
import {
  resplitInBlock,
  resplitText,
  splitText,
  type Resplit,
  type SplitText,
} from './split-blocks.ts';
import { onDemand } from '../units/on-demand.ts';

/** The format this version writes, and the newest it reads. */
export const currentFormat = 1;

/** A reading with what the next one can take over. */
export interface IndexedReading extends FileReading {
  readonly split: SplitText;
  readonly rows: BuiltRows;
  readonly context: ProblemContext;
  readonly census: BlockCensus;
  /** Places of the blocks that have problems. */
  readonly troubled: readonly number[];
}

const noCells: ReadonlyMap<string, SourceCell> = new Map();
const noProblems: readonly Problem[] = [];

interface Format {
  readonly format: number;
  readonly problems: readonly Problem[];
}

function formatOf(top: ParsedBlock | undefined): Format {
  const cell = top?.role === 'top' ? top.cells.get('format') : undefined;
  if (cell === undefined) {
    if (top?.role === 'top' && top.broken) return { format: currentFormat, problems: [] };
    return { format: currentFormat, problems: [fileProblem('format-missing')] };
  }
  const fileSpan = cell.span;
  const format = Number(cell.text);
  if (cell.form !== 'integer' || !(format >= 1)) {
    const problem = fileProblem('format-not-whole', { text: cell.text }, { fileSpan });
    return { format: currentFormat, problems: [problem] };
  }
  if (format <= currentFormat) return { format, problems: [] };
  const details = { format, known: currentFormat };
  return { format, problems: [fileProblem('format-newer', details, { fileSpan })] };
}

function headProblems(split: SplitText, heads: readonly number[]): readonly Problem[] {
  const [first, ...more] = heads.map((index) => split.parsed[index]?.header?.name ?? '');
  if (first === undefined) return [fileProblem('head-missing')];
  return more.map((table, place) => {
    const start = split.starts[heads[place + 1] ?? 0] ?? 0;
    const fileSpan = { start, end: start + table.length + 2 };
    return fileProblem('head-repeated', { table, first }, { fileSpan });
  });
}

function stateOf({ conflicted, broken, shown }: BlockCensus, format: number): FileReading['state'] {
  if (conflicted) return 'conflicted';
  if (format > currentFormat) return 'newer';
  return shown || !broken ? 'readable' : 'unreadable';
}

function shifted(problem: Problem, by: number): Problem {
  const { fileSpan } = problem;
  if (fileSpan === undefined || by === 0) return problem;
  return { ...problem, fileSpan: { start: fileSpan.start + by, end: fileSpan.end + by } };
}

function sameContext(a: ProblemContext, b: ProblemContext): boolean {
  return (
    a.columnRows === b.columnRows &&
    a.settings.units === b.settings.units &&
    a.settings.currency === b.settings.currency
  );
}

const noRows: readonly never[] = [];

function problemContext(
  head: ReadonlyMap<string, SourceCell>,
  rows: BuiltRows,
  before: IndexedReading | undefined,
): ProblemContext {
  const made = { settings: settingsOf(head), columnRows: rows.tables.get('column') ?? noRows };
  return before !== undefined && sameContext(before.context, made) ? before.context : made;
}

function blockOf(block: ParsedBlock, start: number, problems: readonly Problem[]): Block {
  const { text, header } = block;
  return header === undefined ? { text, start, problems } : { text, start, header, problems };
}

interface Parts {
  /** Puts the text together: copying a long one costs more than all the rest of an edit. */
  readonly text: () => string;
  readonly split: SplitText;
  readonly rows: BuiltRows;
  readonly context: ProblemContext;
}

interface Before {
  readonly reading: IndexedReading;
  readonly resplit: Resplit;
}

/** Index that a block had before the change; −1 where it was read anew. */
function indexBefore(index: number, count: number, before: Before): number {
  const { ahead, behind } = before.resplit;
  if (index < ahead) return index;
  return index >= count - behind ? index + before.reading.blocks.length - count : -1;
}

/** True where a block's problems are what they were. */
function problemsStand(parts: Parts, before: Before, index: number, oldIndex: number): boolean {
  const { reading } = before;
  const occurrence = parts.rows.byBlock[index]?.occurrence;
  return (
    parts.context === reading.context && occurrence === reading.rows.byBlock[oldIndex]?.occurrence
  );
}

type ReadBlocks = Pick<IndexedReading, 'blocks' | 'troubled'>;

/** Blocks with their problems; those of blocks that stand as they stood are taken over. */
function blocksOf(parts: Parts, before?: Before): ReadBlocks {
  const { split, rows, context } = parts;
  const fresh = (block: ParsedBlock, index: number): Block => {
    const start = split.starts[index] ?? 0;
    const quiet = !mayHaveProblems(block);
    if (before !== undefined) {
      const oldIndex = indexBefore(index, split.parsed.length, before);
      const kept = before.reading.blocks[oldIndex];
      if (kept !== undefined && (quiet || problemsStand(parts, before, index, oldIndex))) {
        return kept.start === start ? kept : blockOf(block, start, kept.problems);
      }
    }
    const problems = quiet ? noProblems : blockProblems(block, rows.byBlock[index], context);
    return blockOf(block, start, problems);
  };
  if (before !== undefined && standsElse(parts, before))
    return replacedBlocks(parts, before, fresh);
  const blocks = split.parsed.map(fresh);
  return {
    blocks,
    troubled: blocks.flatMap(({ problems }, place) => (problems.length > 0 ? place : [])),
  };
}

/** True where all blocks but those read anew stand where they stood, and their problems with them. */
function standsElse({ split, context }: Parts, { reading, resplit }: Before): boolean {
  return (
    split.starts === reading.split.starts &&
    context === reading.context &&
    takesTheSamePlaces(reading, resplit)
  );
}

function replacedBlocks(
  { split }: Parts,
  { reading, resplit }: Before,
  fresh: (block: ParsedBlock, index: number) => Block,
): ReadBlocks {
  const { ahead, behind } = resplit;
  const blocks = [...reading.blocks];
  const to = split.parsed.length - behind;
  const troubled = reading.troubled.filter((place) => place < ahead);
  split.parsed.slice(ahead, to).forEach((block, place) => {
    const made = fresh(block, ahead + place);
    blocks[ahead + place] = made;
    if (made.problems.length > 0) troubled.push(ahead + place);
  });
  return { blocks, troubled: troubled.concat(reading.troubled.filter((place) => place >= to)) };
}

function problemsOf({ blocks, troubled }: ReadBlocks): readonly Problem[] {
  return troubled.flatMap((place) => {
    const block = blocks[place];
    return (block?.problems ?? []).map((problem) => shifted(problem, block?.start ?? 0));
  });
}

function repeatedProblems(rows: BuiltRows): readonly Problem[] {
  return rows.repeated.map(({ table, id, occurrence }) =>
    fileProblem('row-id-repeated', { id }, { place: { table, row: id, occurrence, column: 'id' } }),
  );
}

function assembled(parts: Omit<Parts, 'context'>, before?: Before): IndexedReading {
  const { split, rows } = parts;
  const census = before ? censusAfter(before.reading, before.resplit) : takeCensus(split);
  const { heads } = census;
  const head = split.parsed[heads[0] ?? -1]?.cells ?? noCells;
  const context = problemContext(head, rows, before?.reading);
  const { format, problems: formatProblems } = formatOf(split.parsed[0]);
  const read = blocksOf({ ...parts, context }, before);
  const problems = [
    ...formatProblems,
    ...headProblems(split, heads),
    ...problemsOf(read),
    ...repeatedProblems(rows),
  ];
  const state = stateOf(census, format);
  const { tables } = rows;
  const kept = { split, rows, context, census };
  const made = { ...read, head, tables, format, state, problems, ...kept };
  return withText(made, parts.text);
}

const textOnDemand = onDemand('text');

/** Adds the text, put together when it is first asked for. */
function withText(made: Omit<IndexedReading, 'text'>, text: () => string): IndexedReading {
  let known: string | undefined;
  return textOnDemand(made, () => (known ??= text()));
}

/** Reads a job or book file. Any text can be read: what is wrong with it is in `problems`. */
export function readFile(text: string): FileReading {
  const split = splitText(text);
  return assembled({ text: () => text, split, rows: buildRows(split.parsed) });
}

function isIndexed(reading: FileReading): reading is IndexedReading {
  return 'split' in reading && 'rows' in reading && 'context' in reading;
}

/** The part of a reading that only this folder uses. */
export function indexed(reading: FileReading): IndexedReading {
  if (isIndexed(reading)) return reading;
  const split = splitText(reading.text);
  return assembled({ text: () => reading.text, split, rows: buildRows(split.parsed) });
}

/** True where the blocks read anew hold rows in the places of those before, so that only cells differ. */
function takesTheSamePlaces(before: IndexedReading, { split, ahead, behind }: Resplit): boolean {
  const to = split.parsed.length - behind;
  return (
    split.parsed.length === before.split.parsed.length &&
    split.parsed.slice(ahead, to).every((block, index) => {
      const old = before.split.parsed[ahead + index];
      return old !== undefined && samePlace(old, block);
    })
  );
}

function rowsAfter(before: IndexedReading, resplit: Resplit): BuiltRows {
  const { split, ahead, behind } = resplit;
  return takesTheSamePlaces(before, resplit)
    ? replaceRows(before.rows, split.parsed, { from: ahead, to: split.parsed.length - behind })
    : buildRows(split.parsed, before.rows);
}

/**
 * Reads a text that came out of a change of a text read before. Only the blocks around the change
 * are read; rows and tables that did not change are the same objects as before.
 */
export function readChange(previous: FileReading, text: string): FileReading {
  if (text === previous.text) return previous;
  const before = indexed(previous);
  const resplit = resplitText(before.split, previous.text, text);
  const rows = rowsAfter(before, resplit);
  return assembled({ text: () => text, split: resplit.split, rows }, { reading: before, resplit });
}

/**
 * Reads a text in which one stretch within one block was replaced; undefined where the change may
 * reach beyond its block and the whole text has to be looked at.
 */
export function readInBlock(
  before: IndexedReading,
  change: TextChange,
): IndexedReading | undefined {
  const resplit = resplitInBlock(before.split, change);
  if (resplit === undefined) return undefined;
  const { split } = resplit;
  const text = (): string => split.parsed.map((block) => block.text).join('');
  return assembled({ text, split, rows: rowsAfter(before, resplit) }, { reading: before, resplit });
}
