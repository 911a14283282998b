import { textWidth, type PdfFont } from '../pdf-letters.ts';
import { flatContent, type Content, type Html } from './html.ts';

/** Letters in one font and size; a box to tick is one too. */
export interface Run {
  readonly text: string;
  readonly font: PdfFont;
  /** In points. */
  readonly size: number;
  readonly box?: boolean;
}

/** How text begins: what stands inside may be bold or smaller. */
export type Face = Pick<Run, 'font' | 'size'>;

/** Runs beside each other, with their width in points. */
export interface Line {
  readonly runs: readonly Run[];
  readonly width: number;
  readonly size: number;
}

/** Side of a box to tick, in points. */
export const boxSide = 9;
const smallSize = 8.5;

/** Classes of an element. */
export function classesOf({ attributes }: Html): readonly string[] {
  return (attributes['class'] ?? '').split(' ');
}

/** Words and boxes of content in the order of reading. */
export function runsOf(content: readonly Content[], face: Face): readonly Run[] {
  return flatContent(content).flatMap((one): readonly Run[] => {
    if (typeof one === 'string') return [{ ...face, text: one }];
    const classes = classesOf(one);
    if (classes.includes('box')) return [{ ...face, text: '', box: true }];
    const bold = ['strong', 'th', 'dd', 'b'].includes(one.name);
    const size = classes.includes('small') ? smallSize : face.size;
    return runsOf(one.content, { font: bold ? 'F2' : face.font, size });
  });
}

function widthOf({ text, font, size, box }: Run): number {
  return box === true ? boxSide : textWidth(text, font, size);
}

/** Words with the space after each; one wider than the line comes apart wherever it must. */
function wordsOf(runs: readonly Run[], width: number): readonly Run[] {
  return runs.flatMap((run): readonly Run[] => {
    if (run.box === true) return [run];
    const words = run.text.match(/\s+|[^\s]+/g) ?? [];
    return words.flatMap((text) => {
      if (widthOf({ ...run, text }) <= width) return [{ ...run, text }];
      return brokenWord({ ...run, text }, width);
    });
  });
}

function brokenWord(run: Run, width: number): readonly Run[] {
  const parts: Run[] = [];
  let text = '';
  for (const sign of run.text) {
    if (text !== '' && widthOf({ ...run, text: text + sign }) > width) {
      parts.push({ ...run, text });
      text = '';
    }
    text += sign;
  }
  return [...parts, { ...run, text }];
}

function joined(words: readonly Run[]): readonly Run[] {
  const runs: Run[] = [];
  for (const word of words) {
    const last = runs.at(-1);
    const same = last?.font === word.font && last.size === word.size;
    if (last !== undefined && same && last.box !== true && word.box !== true)
      runs[runs.length - 1] = { ...last, text: last.text + word.text };
    else runs.push(word);
  }
  return runs;
}

function isBlank({ text, box }: Run): boolean {
  return box !== true && text.trim() === '';
}

function lineOf(words: readonly Run[], face: Face): Line {
  const end = words.findLastIndex((word) => !isBlank(word));
  const runs = joined(words.slice(0, end + 1));
  const width = runs.reduce((sum, run) => sum + widthOf(run), 0);
  const size = Math.max(face.size * 0.8, ...runs.map((run) => run.size));
  return { runs, width, size };
}

/** Runs broken into lines no wider than this, in points. */
export function wrapped(runs: readonly Run[], width: number, face: Face): readonly Line[] {
  const lines: Line[] = [];
  let line: Run[] = [];
  let used = 0;
  for (const word of wordsOf(runs, width)) {
    const wide = widthOf(word);
    if (line.length > 0 && used + wide > width && !isBlank(word)) {
      lines.push(lineOf(line, face));
      [line, used] = [[], 0];
    }
    if (line.length === 0 && isBlank(word)) continue;
    line.push(word);
    used += wide;
  }
  return line.length === 0 ? lines : [...lines, lineOf(line, face)];
}

/** Width of runs on one line, and of their widest word, in points. */
export function widthsOf(runs: readonly Run[]): { readonly whole: number; readonly word: number } {
  const whole = runs.reduce((sum, run) => sum + widthOf(run), 0);
  const words = wordsOf(runs, Infinity).filter((run) => !isBlank(run));
  return { whole, word: Math.max(0, ...words.map(widthOf)) };
}
