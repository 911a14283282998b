import { problemMaker, type Problem, type Severity } from '../problems.ts';

const texts = {
  'line-not-understood':
    '“{text}” is not written as key = value; {row} is locked until it is mended in the text.',
  'value-missing': '{key} has no value; {row} is locked until it is mended in the text.',
  'text-not-closed':
    'The text of {key} has no closing quote; {row} is locked until it is mended in the text.',
  'list-not-closed':
    'The list of {key} has no closing bracket; {row} is locked until it is mended in the text.',
  'value-followed':
    '“{text}” stands behind the value of {key}; a remark begins with #. {row} is locked until it is mended in the text.',
  'value-unquoted':
    '{key} needs quotes round its text: {key} = "{text}"; {row} is locked until it is mended in the text.',
  'key-repeated':
    '{key} stands twice; {row} is locked until one of the two lines is taken out in the text.',
  'toml-refused': '{row} cannot be read as TOML ({reason}); it is locked until it is mended.',
  'header-unreadable':
    '“{text}” is not a table header such as [[part]]; what follows it is locked until it is mended.',
  'table-brackets':
    'A row begins with double brackets: write [[{table}]]; it is locked until then.',
  'head-brackets': 'Write [{table}] with single brackets; there is only one in a file.',
  'head-repeated': '[{table}] is a second head table; only the first, [{first}], counts.',
  'head-missing': 'The file has no [job] table, so units, currency and book are not set.',
  'conflict-markers':
    'Two versions stand between git’s conflict markers here; open the text and keep what is right of {row}.',
  'format-missing': 'The file does not say its format; write format = 1 as its first line.',
  'format-not-whole': 'format = {text} is not a whole number from 1; write format = 1.',
  'format-newer':
    'This file has format {format}, which is newer than format {known} that this version reads; it is shown but not changed.',
  'key-outside': '{key} stands above the first table and is not used; only format belongs there.',
  'table-unknown': 'Table [[{table}]] is not known here; it is kept as it is.{near}',
  'key-unknown': '{key} is not a column of {table}; it is kept as it is.{near}',
  'row-id-missing': 'This {table} has no id; give it one.',
  'row-id-ill-formed':
    '“{id}” cannot be an id: small letters, digits and _, with a letter first, such as {better}.',
  'row-id-reserved': '“{id}” cannot be an id, because it is a word of formulas; use another.',
  'row-id-repeated':
    'Two rows are called {id}; references to it have no answer until one is renamed.',
  'order-not-number': 'order = {text} is not a number, so the row follows the one above it.',
  'column-taken': 'Table {table} has a column {key} already; give this one another key.',
  'column-table-unknown': 'A column belongs to a table such as part, not to “{table}”.',
  'column-type-unknown': '“{type}” is not a type of column; write text, number, length, yes_no…',
} as const;

export type FileProblemCode = keyof typeof texts;

const severities: Partial<Record<FileProblemCode, Severity>> = {
  'format-missing': 'warning',
  'head-missing': 'warning',
  'head-repeated': 'warning',
  'key-outside': 'note',
  'table-unknown': 'note',
  'key-unknown': 'note',
  'order-not-number': 'warning',
};

const make = problemMaker(texts);

/** A problem of the file's text. */
export function fileProblem(
  code: FileProblemCode,
  details: Readonly<Record<string, string | number>> = {},
  more: Partial<Problem> = {},
): Problem {
  return make(code, details, { severity: severities[code] ?? 'error', ...more });
}
