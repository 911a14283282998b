import type { FunctionEntry, Parameter } from '../catalogue.ts';
import {
  anything,
  many,
  noAnswer,
  number,
  optional,
  standard,
  yesNo,
  yesNoAnswer,
} from './make.ts';
import { valuesOf } from './values.ts';

const conditions = [many(yesNo('conditions', 'Comparisons, or other yes-no values'))];

function junction(name: string, help: string, example: FunctionEntry['example']): FunctionEntry {
  return standard({ name, help, parameters: conditions, result: { kind: 'yes-no' }, example });
}

/** These must see an error or leave a branch alone, so the evaluator's own functions answer them. */
const lazy: readonly FunctionEntry[] = [
  standard({
    name: 'IF',
    help: 'One value or another; blank where the condition fails and nothing else is said.',
    parameters: [
      yesNo('condition', 'A comparison, or another yes-no value'),
      anything('then', 'The answer where it holds'),
      optional(anything('otherwise', 'The answer where it does not; blank unless told')),
    ],
    result: { kind: 'branches', arguments: [1, 2] },
    example: { formula: '=IF(3in > 2in, 1/4in, 1/8in)', shows: '1/4 in' },
  }),
  standard({
    name: 'IFERROR',
    help: 'A value, or another where the first has no answer.',
    parameters: [
      anything('value', 'What is tried'),
      anything('otherwise', 'The answer where there is none'),
    ],
    result: { kind: 'branches', arguments: [0, 1] },
    example: { formula: '=IFERROR(SQRT(-1), 2)', shows: '2' },
  }),
  standard({
    name: 'ISERROR',
    help: 'Whether a value has no answer.',
    parameters: [anything('value', 'What is tried')],
    result: { kind: 'yes-no' },
    example: { formula: '=ISERROR(1/0)', shows: 'yes' },
  }),
  standard({
    name: 'CHOOSE',
    help: 'The value at a place in the list of arguments.',
    parameters: [
      number('place', 'A whole number from 1'),
      { ...anything('values', 'What is chosen from'), repeats: true },
    ],
    result: { kind: 'branches', arguments: [1] },
    example: { formula: '=CHOOSE(2, 1/8in, 1/4in)', shows: '1/4 in' },
  }),
  junction('AND', 'Whether all conditions hold.', {
    formula: '=AND(3in > 2in, 1in > 2in)',
    shows: 'no',
  }),
  junction('OR', 'Whether one of the conditions holds.', {
    formula: '=OR(3in > 2in, 1in > 2in)',
    shows: 'yes',
  }),
  junction('XOR', 'Whether an odd number of the conditions holds.', {
    formula: '=XOR(3in > 2in, 1in > 2in)',
    shows: 'yes',
  }),
  standard({
    name: 'NOT',
    help: 'Yes for no, and no for yes.',
    parameters: [yesNo('condition', 'A comparison, or another yes-no value')],
    result: { kind: 'yes-no' },
    example: { formula: '=NOT(3in > 2in)', shows: 'no' },
  }),
];

function constant(name: 'TRUE' | 'FALSE', yes: boolean): FunctionEntry {
  return standard({
    name,
    help: yes ? 'Yes.' : 'No.',
    parameters: [],
    result: { kind: 'yes-no' },
    example: { formula: `=${name}()`, shows: yes ? 'yes' : 'no' },
    run: () => yesNoAnswer(yes),
  });
}

const looked: Parameter = anything('value', 'A cell, or any other value');

function question(
  name: string,
  help: string,
  example: FunctionEntry['example'],
): (kinds: readonly string[]) => FunctionEntry {
  return (kinds) =>
    standard({
      name,
      help,
      parameters: [looked],
      result: { kind: 'yes-no' },
      example,
      run: (args) => {
        const value = valuesOf(args[0])[0];
        const empty = value === undefined || (value.kind === 'text' && value.text === '');
        return yesNoAnswer(kinds.includes(empty ? 'blank' : value.kind));
      },
    });
}

/** Conditions and questions about values. */
export const logicFunctions: readonly FunctionEntry[] = [
  ...lazy,
  constant('TRUE', true),
  constant('FALSE', false),
  standard({
    name: 'NA',
    help: 'No answer: for a value that is not known yet.',
    parameters: [],
    result: { kind: 'branches', arguments: [] },
    example: { formula: '=ISERROR(NA())', shows: 'yes' },
    run: () => noAnswer('NA', 'the value is not known yet'),
  }),
  question('ISBLANK', 'Whether a cell is blank.', { formula: '=ISBLANK(2)', shows: 'no' })([
    'blank',
  ]),
  question('ISNUMBER', 'Whether a value is a number or a measure.', {
    formula: '=ISNUMBER(2in)',
    shows: 'yes',
  })(['quantity']),
  question('ISTEXT', 'Whether a value is text.', { formula: '=ISTEXT("a")', shows: 'yes' })([
    'text',
    'choice',
    'link',
  ]),
];
