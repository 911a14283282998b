import { plain } from '../../units/dimension.ts';
import { readQuantity } from '../../units/read-quantity.ts';
import { unitOf } from '../../units/unit-words.ts';
import { sameDimension } from '../../units/dimension.ts';
import type { Argument, FunctionEntry, Parameter } from '../catalogue.ts';
import {
  answer,
  many,
  noAnswer,
  number,
  optional,
  standard,
  textAnswer,
  words,
  yesNo,
  yesNoAnswer,
} from './make.ts';
import { numberOf, textOf, valuesOf, wordsIn } from './values.ts';

const text = words('text', 'Text; a measure becomes text through SHOW');
/** As many letters as other spreadsheets allow in a cell. */
const longest = 32_767;

type Letters = readonly string[];

function lettersOf(argument: Argument): Letters {
  return Array.from(textOf(argument));
}

function count(args: readonly Argument[], index: number, otherwise: number): number {
  return Math.trunc(numberOf(args[index]) ?? otherwise);
}

interface TextFunction {
  readonly name: string;
  readonly help: string;
  readonly parameters: readonly Parameter[];
  readonly example: FunctionEntry['example'];
  /** The text, or undefined where a count makes no sense. */
  readonly make: (args: readonly Argument[]) => string | undefined;
}

function textFunction(form: TextFunction): FunctionEntry {
  const { name, help, parameters, example, make } = form;
  return standard({
    name,
    help,
    parameters,
    result: { kind: 'text' },
    example,
    run: (args) => {
      const made = make(args);
      if (made === undefined) return noAnswer(name, 'there are not so many letters');
      if (made.length > longest) return noAnswer(name, 'the text becomes too long');
      return textAnswer(made);
    },
  });
}

const length = number('count', 'How many letters');

const parts: readonly FunctionEntry[] = [
  textFunction({
    name: 'LEFT',
    help: 'The first letters of a text.',
    parameters: [text, optional(length)],
    example: { formula: '=LEFT("baffle", 3)', shows: 'baf' },
    make: (args) => {
      const letters = count(args, 1, 1);
      return letters < 0 ? undefined : lettersOf(args[0]).slice(0, letters).join('');
    },
  }),
  textFunction({
    name: 'RIGHT',
    help: 'The last letters of a text.',
    parameters: [text, optional(length)],
    example: { formula: '=RIGHT("baffle", 3)', shows: 'fle' },
    make: (args) => {
      const letters = count(args, 1, 1);
      const all = lettersOf(args[0]);
      return letters < 0 ? undefined : all.slice(Math.max(all.length - letters, 0)).join('');
    },
  }),
  textFunction({
    name: 'MID',
    help: 'Letters from the middle of a text.',
    parameters: [text, number('start', 'Place of the first letter, from 1'), length],
    example: { formula: '=MID("baffle", 2, 3)', shows: 'aff' },
    make: (args) => {
      const [start, letters] = [count(args, 1, 1), count(args, 2, 0)];
      if (start < 1 || letters < 0) return undefined;
      return lettersOf(args[0])
        .slice(start - 1, start - 1 + letters)
        .join('');
    },
  }),
  textFunction({
    name: 'UPPER',
    help: 'A text in capitals.',
    parameters: [text],
    example: { formula: '=UPPER("door")', shows: 'DOOR' },
    make: (args) => textOf(args[0]).toUpperCase(),
  }),
  textFunction({
    name: 'LOWER',
    help: 'A text in small letters.',
    parameters: [text],
    example: { formula: '=LOWER("Door")', shows: 'door' },
    make: (args) => textOf(args[0]).toLowerCase(),
  }),
  textFunction({
    name: 'TRIM',
    help: 'A text without spaces around it and with single ones inside.',
    parameters: [text],
    example: { formula: '=TRIM("  left   door ")', shows: 'left door' },
    make: (args) => textOf(args[0]).trim().replace(/ +/g, ' '),
  }),
];

/** Replaces every occurrence, or only the one with this number. */
function replaced(args: readonly Argument[]): string | undefined {
  const [whole, old, fresh] = [textOf(args[0]), textOf(args[1]), textOf(args[2])];
  if (old === '') return whole;
  const which = numberOf(args[3]);
  if (which === undefined) return whole.replaceAll(old, fresh);
  if (which < 1) return undefined;
  const pieces = whole.split(old);
  const at = Math.trunc(which);
  if (at >= pieces.length) return whole;
  return pieces.slice(0, at).join(old) + fresh + pieces.slice(at).join(old);
}

const joins: readonly FunctionEntry[] = [
  textFunction({
    name: 'CONCATENATE',
    help: 'Texts one after the other, as & joins two.',
    parameters: [many(words('texts', 'Texts, or a list'))],
    example: { formula: '=CONCATENATE("left", " ", "door")', shows: 'left door' },
    make: (args) => args.flatMap(valuesOf).map(wordsIn).join(''),
  }),
  textFunction({
    name: 'TEXTJOIN',
    help: 'Texts one after the other with something between them.',
    parameters: [
      words('between', 'What stands between two texts'),
      yesNo('skip', 'Whether blank ones are left out'),
      many(words('texts', 'Texts, or a list')),
    ],
    example: { formula: '=TEXTJOIN(", ", TRUE(), "base", "ring")', shows: 'base, ring' },
    make: (args) => {
      const all = args
        .slice(2)
        .flatMap((argument) =>
          Array.isArray(argument)
            ? (argument as readonly Argument[]).map(textOf)
            : [textOf(argument)],
        );
      const skip = (numberOf(args[1]) ?? 0) !== 0;
      return all.filter((one) => !skip || one !== '').join(textOf(args[0]));
    },
  }),
  textFunction({
    name: 'SUBSTITUTE',
    help: 'A text with part of it replaced.',
    parameters: [
      text,
      words('old', 'What is replaced'),
      words('new', 'What takes its place'),
      optional(number('which', 'Only the first, second…; all unless told')),
    ],
    example: { formula: '=SUBSTITUTE("left door", "left", "right")', shows: 'right door' },
    make: replaced,
  }),
  textFunction({
    name: 'REPT',
    help: 'A text so many times.',
    parameters: [text, number('times', 'How often')],
    example: { formula: '=REPT("ab", 3)', shows: 'ababab' },
    make: (args) => {
      const times = count(args, 1, 0);
      if (times < 0) return undefined;
      const once = textOf(args[0]);
      // One letter past the limit is enough to be refused.
      return once.repeat(Math.min(times, Math.floor(longest / Math.max(once.length, 1)) + 1));
    },
  }),
];

function place(name: 'FIND' | 'SEARCH', help: string): FunctionEntry {
  const fold = (letters: string): string => (name === 'FIND' ? letters : letters.toLowerCase());
  return standard({
    name,
    help,
    parameters: [
      words('part', 'What is looked for'),
      text,
      optional(number('start', 'Place to begin at; 1 unless told')),
    ],
    result: { kind: 'quantity', dimension: plain },
    example: { formula: `=${name}("${name === 'FIND' ? 'f' : 'F'}", "baffle")`, shows: '3' },
    run: (args) => {
      const start = count(args, 2, 1);
      if (start < 1) return noAnswer(name, 'places are counted from 1');
      const found = fold(textOf(args[1])).indexOf(fold(textOf(args[0])), start - 1);
      if (found === -1) return noAnswer(name, 'the text does not hold it');
      return answer(name, found + 1, plain);
    },
  });
}

function unit(name: string, help: string): Parameter {
  return { name, help, type: { kind: 'unit' } };
}

const readings: readonly FunctionEntry[] = [
  standard({
    name: 'LEN',
    help: 'How many letters a text has.',
    parameters: [text],
    result: { kind: 'quantity', dimension: plain },
    example: { formula: '=LEN("baffle")', shows: '6' },
    run: (args) => answer('LEN', lettersOf(args[0]).length, plain),
  }),
  standard({
    name: 'EXACT',
    help: 'Whether two texts are the same to the letter; = takes capitals and small letters alike.',
    parameters: [words('first', 'Text'), words('second', 'Text')],
    result: { kind: 'yes-no' },
    example: { formula: '=EXACT("MDF", "mdf")', shows: 'no' },
    run: (args) => yesNoAnswer(textOf(args[0]) === textOf(args[1])),
  }),
  place('FIND', 'Where a text stands in another, capitals and small letters apart.'),
  place('SEARCH', 'Where a text stands in another, capitals and small letters alike.'),
  standard({
    name: 'VALUE',
    help: 'The plain number that a text spells.',
    parameters: [text],
    result: { kind: 'quantity', dimension: plain },
    example: { formula: '=VALUE("1 1/2")', shows: '1.5' },
    run: (args, { settings }) => {
      const read = readQuantity(textOf(args[0]), { settings, wanted: plain });
      return read.ok ? answer('VALUE', read.value.value.base, plain) : read;
    },
  }),
  standard({
    name: 'CONVERT',
    help: 'A plain number of one unit as a plain number of another; measures need none of this.',
    parameters: [
      number('x', 'How many of the first unit'),
      unit('from', 'The unit of x'),
      unit('to', 'The unit of the answer'),
    ],
    result: { kind: 'quantity', dimension: plain },
    example: { formula: '=CONVERT(1, ft, in)', shows: '12' },
    run: (args, { settings }) => {
      const [from, to] = [unitOf(textOf(args[1]), settings), unitOf(textOf(args[2]), settings)];
      if (from === undefined || to === undefined) return noAnswer('CONVERT', 'a unit is missing');
      if (!sameDimension(from.dimension, to.dimension)) {
        return noAnswer('CONVERT', `${from.word} and ${to.word} do not measure the same thing`);
      }
      const base = (numberOf(args[0]) ?? 0) * from.factor + from.offset;
      return answer('CONVERT', (base - to.offset) / to.factor, plain);
    },
  }),
];

/** Texts. */
export const textFunctions: readonly FunctionEntry[] = [...parts, ...joins, ...readings];
