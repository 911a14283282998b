import type { FunctionEntry, Parameter } from '../../formula/catalogue.ts';
import { failed, ok } from '../../result.ts';
import { plain, type Dimension } from '../../units/dimension.ts';
import { missing, numberIn, quantityIn, shownWith } from '../arguments.ts';
import { ranged, rangeProblem, type Range } from '../range.ts';
import { packCount } from '../packs.ts';

const name = 'PACKS';

const needParameter: Parameter = {
  name: 'need',
  help: 'What is needed.',
  type: { kind: 'same', letter: 'a' },
  ...ranged('not-negative'),
};

const packParameter: Parameter = {
  name: 'pack',
  help: 'What one pack holds.',
  type: { kind: 'same', letter: 'a' },
  ...ranged('positive'),
};

/** PACKS. */
export const packFunction: FunctionEntry = {
  name,
  group: 'price',
  help: 'Packs to buy for a need, whole.',
  parameters: [
    needParameter,
    packParameter,
    {
      name: 'slack',
      help: 'Share by which a pack may be asked to give more than it holds; none when left out.',
      type: { kind: 'quantity', dimensions: [plain] },
      ...ranged('not-negative'),
      optional: true,
    },
  ],
  result: { kind: 'quantity', dimension: plain },
  example: { formula: '=PACKS(2.003qt, 1qt, 1%)', shows: '2' },
  source: 'definition',
  run: ([needGiven, packGiven, slackGiven], context) => {
    const need = quantityIn(needGiven);
    if (need === undefined) return failed(missing(name, needParameter));
    const pack = quantityIn(packGiven);
    if (pack === undefined) return failed(missing(name, packParameter));
    const slack = numberIn(slackGiven) ?? 0;
    const checks: readonly (readonly [string, number, Dimension, Range])[] = [
      ['need', need.base, need.dimension, 'not-negative'],
      ['pack', pack.base, pack.dimension, 'positive'],
      ['slack', slack, plain, 'not-negative'],
    ];
    for (const [word, value, dimension, range] of checks) {
      const of = { functionName: name, name: word, value, dimension, show: shownWith(context) };
      const problem = rangeProblem(of, range);
      if (problem !== undefined) return failed(problem);
    }
    const base = packCount(need.base, pack.base, slack);
    return ok({ kind: 'quantity', base, dimension: plain });
  },
};
