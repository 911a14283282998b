import { failed, type Result } from '../result.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { DrawnFile } from './drawn-file.ts';
import { readDxf } from './dxf-file.ts';
import { outlineAddress } from './outline-address.ts';
import { outlineInDrawing } from './outline-in-drawing.ts';
import { outlineProblem } from './outline-problems.ts';
import { lengthWords } from './outline-words.ts';
import { readSvg } from './svg-file.ts';
import type { TracedOutline } from './traced-outline.ts';

/** What is asked of the outline files of a job. */
export interface AskedOutline {
  /** `outlines/door.svg#left`. */
  readonly address: string;
  /** Size of one unit of the drawing, in mm; undefined where the drawing must say it. */
  readonly unit: number | undefined;
  readonly settings: UnitSettings;
}

/** Finds the outline that a cell or formula asks for. */
export type OutlineSource = (asked: AskedOutline) => Result<TracedOutline>;

/** Texts of outline files by their path; undefined for one that is not there. */
export type OutlineTexts = ReadonlyMap<string, string | undefined>;

/** A drawing, or the reason in words why a text is none. */
type Reading = DrawnFile | string;

/** The outline files of a job as they are now. */
export interface OutlineFiles {
  readonly texts: OutlineTexts;
  readonly source: OutlineSource;
  /** What has been read of them, for the files that come after. */
  readonly readings: ReadonlyMap<string, Reading>;
}

/** Longest text of a drawing, in millions of characters: beyond it a traced photograph is likely. */
const mostMillions = 8;

const svgFile = /\.svg$/i;
const drawingFile = /\.(svg|dxf)$/i;

/** Readings made before of files that say the same still. */
function readingsKept(texts: OutlineTexts, before: OutlineFiles | undefined): Map<string, Reading> {
  const kept = [...(before?.readings ?? [])].filter(
    ([file]) => texts.get(file) !== undefined && texts.get(file) === before?.texts.get(file),
  );
  return new Map(kept);
}

/**
 * Finds outlines in the texts of drawing files. Each text is read once; what `before` has read of a
 * text that is still the same is kept.
 */
export function openOutlineFiles(texts: OutlineTexts, before?: OutlineFiles): OutlineFiles {
  const readings = readingsKept(texts, before);
  const answers = new Map<string, Result<TracedOutline>>();

  function reading(file: string, text: string): Reading {
    const known = readings.get(file);
    if (known !== undefined) return known;
    const made = svgFile.test(file) ? readSvg(text) : readDxf(text);
    readings.set(file, made);
    return made;
  }

  function found({ address, unit, settings }: AskedOutline): Result<TracedOutline> {
    const where = outlineAddress(address);
    if (where === undefined) return failed(outlineProblem('outline-address-wrong', { address }));
    const { file, name } = where;
    if (!drawingFile.test(file)) {
      return failed(outlineProblem('outline-kind-unknown', { address, file }));
    }
    if (unit !== undefined && !(unit > 0 && Number.isFinite(unit))) {
      const shown = lengthWords(unit, settings);
      return failed(outlineProblem('outline-unit-wrong', { address, unit: shown }));
    }
    const text = texts.get(file);
    if (text === undefined) {
      const code = texts.has(file) ? 'outline-missing' : 'outline-on-its-way';
      return failed(outlineProblem(code, { file, address }));
    }
    const millions = Math.ceil(text.length / 1e6);
    if (millions > mostMillions) {
      const details = { file, size: millions, most: mostMillions };
      return failed(outlineProblem('outline-too-long', details));
    }
    const drawn = reading(file, text);
    if (typeof drawn === 'string') {
      return failed(outlineProblem('outline-unreadable', { file, reason: drawn }));
    }
    return outlineInDrawing(drawn, { address, file, name, unit, settings });
  }

  return {
    texts,
    readings,
    source: (asked) => {
      const { address, unit, settings } = asked;
      const key = `${JSON.stringify(settings)} ${String(unit)} ${address}`;
      const known = answers.get(key) ?? found(asked);
      answers.set(key, known);
      return known;
    },
  };
}
