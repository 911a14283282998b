import type { Column } from './column.ts';
import { scanBlock } from './scan-block.ts';
import type { SourceCell } from './source.ts';
import { cellOf, tomlValues } from './toml-values.ts';

const loneSurrogate = /[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;

const escapes: Readonly<Record<string, string>> = {
  '"': '\\"',
  '\\': '\\\\',
  '\b': '\\b',
  '\t': '\\t',
  '\n': '\\n',
  '\f': '\\f',
  '\r': '\\r',
};

function isControl(letter: string): boolean {
  return letter < ' ' || letter === '\u007f';
}

function escaped(letter: string): string {
  const known = escapes[letter];
  if (known !== undefined) return known;
  return isControl(letter) ? `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}` : letter;
}

/**
 * A text as TOML: in double quotes; in single ones where it holds a double quote or a backslash and
 * no single quote; else with escapes. Always on one line.
 */
export function quotedText(text: string): string {
  const whole = text.replaceAll(loneSurrogate, '\uFFFD');
  const letters = Array.from(whole);
  const plain = !letters.some(isControl);
  if (plain && !/["\\]/.test(whole)) return `"${whole}"`;
  if (plain && !whole.includes("'")) return `'${whole}'`;
  return `"${letters.map(escaped).join('')}"`;
}

/** A dotted key as TOML; words that are no bare keys are quoted. */
export function keyText(key: string): string {
  return key
    .split('.')
    .map((word) => (/^[\w-]+$/.test(word) ? word : quotedText(word)))
    .join('.');
}

/** The form a text has where it is written without quotes; undefined where it cannot be. */
function bareForm(text: string): SourceCell['form'] | undefined {
  if (!/^[\d+\-tf[{]/.test(text) || /[\r\n]/.test(text)) return undefined;
  const line = `value = ${text}`;
  const [entry] = scanBlock(line, 0).entries;
  if (entry?.valueEnd !== line.length) return undefined;
  const values = tomlValues(line);
  if (!('table' in values)) return undefined;
  return cellOf(values.table['value'], line, entry).form;
}

type Form = SourceCell['form'];

const numbers: readonly Form[] = ['integer', 'float'];

function isPlainNumber(column: Column): boolean {
  if (column.type.kind !== 'quantity') return false;
  const { dimension } = column.type;
  if (dimension === 'any') return true;
  const { length, mass, time, temperature, money, tag } = dimension;
  return tag === undefined && [length, mass, time, temperature, money].every((one) => one === 0);
}

function bareForms(old: Form | undefined, column: Column | undefined): readonly Form[] {
  if (old === 'integer' || old === 'float') return numbers;
  if (old === 'string') return [];
  if (old !== undefined) return [old];
  if (column === undefined) return [];
  if (column.type.kind === 'date') return ['date'];
  if (column.type.kind === 'list') return ['array'];
  return isPlainNumber(column) ? numbers : [];
}

/**
 * The value to write for a cell's text. A value keeps the form it has in the file as long as the text
 * allows; a new one is bare only for plain numbers, dates and lists, by its column. Read again, it
 * always gives the same text.
 */
export function valueText(
  text: string,
  old: SourceCell | undefined,
  column: Column | undefined,
): string {
  const allowed = bareForms(old?.form, column);
  if (allowed.length === 0) return quotedText(text);
  const form = bareForm(text);
  return form !== undefined && allowed.includes(form) ? text : quotedText(text);
}
