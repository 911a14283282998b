import { join } from 'node:path';
import { beforeAll, test } from 'vitest';
import type {
  CutAnswer,
  CutInstance,
  RectanglesInstance,
} from '../../extension/engine/cutting/instance.ts';
import {
  classInstance,
  countedSets,
  cutSets,
  polygonSet,
  pricedInstance,
  pricedSets,
  uniformSets,
  vertexSet,
} from '../helpers/cut-sets.ts';
import { doorsOn } from '../helpers/door-parts.ts';
import { bundled } from './bundled.ts';
import { load, milliseconds, record, seconds, type FigureLine } from './figures.ts';

interface Timed {
  readonly answer: CutAnswer;
  /** Of the processor, ms: other programs do not count. */
  readonly time: number;
}

let layOut: (instance: CutInstance) => CutAnswer;

beforeAll(async () => {
  ({ layOut } = (await bundled('cutting-program')) as typeof import('./cutting-program.ts'));
});

function timed(instance: CutInstance): Timed {
  const before = process.cpuUsage().user;
  const answer = layOut(instance);
  return { answer, time: (process.cpuUsage().user - before) / 1000 };
}

function longest(all: readonly Timed[]): number {
  return Math.max(...all.map(({ time }) => time));
}

function sum(all: readonly Timed[], of: (answer: CutAnswer) => number): number {
  return all.reduce((total, { answer }) => total + of(answer), 0);
}

function over(part: number, whole: number): string {
  return `${((part / whole - 1) * 100).toFixed(2)} %`;
}

// Every tenth of the 500 instances where time is short.
const repeats = process.env['CUT_ALL'] === undefined ? 1 : 10;

function classes(): readonly RectanglesInstance[] {
  const kinds = Array.from({ length: 10 }, (_, at) => at + 1);
  const indices = Array.from({ length: repeats }, (_, at) => at);
  return kinds.flatMap((kind) =>
    [20, 40, 60, 80, 100].flatMap((pieces) =>
      indices.map((index) => classInstance(kind, pieces, index)),
    ),
  );
}

function rectangles(): readonly FigureLine[] {
  const lines: FigureLine[] = [];
  for (const method of ['free', 'guillotine'] as const) {
    const all = classes().map((instance) => timed({ ...instance, method }));
    const [bins, bound] = [sum(all, ({ count }) => count), sum(all, (answer) => answer.bound)];
    lines.push({
      what: `${all.length} instances of ten classes, ${method}: ${bins} sheets over a bound of ${bound}`,
      figure: over(bins, bound),
      target: '≤ 1.8 %',
    });
    lines.push({ what: 'The longest of them', figure: seconds(longest(all)), target: '≤ 1 s' });
  }
  return lines;
}

const pricedClasses = [
  [2, '≤ 3 %'],
  [4, '≤ 7 %'],
  [6, '≤ 7 %'],
] as const;

function pricedLine(
  all: readonly RectanglesInstance[],
  what: string,
  target: string,
): readonly FigureLine[] {
  return (['free', 'guillotine'] as const).map((method) => {
    const answers = all.map((instance) => timed({ ...instance, method }));
    const [price, bound] = [
      sum(answers, (answer) => answer.price),
      sum(answers, ({ priceBound }) => priceBound),
    ];
    const time = seconds(longest(answers));
    return {
      what: `${what}, ${method}: price over the least possible; at most ${time}`,
      figure: over(price, bound),
      target,
    };
  });
}

/** Sets drawn by the recipe. */
function pricedDrawn(): readonly FigureLine[] {
  return pricedClasses.flatMap(([kind, target]) => {
    const all = [20, 40, 60, 80, 100].flatMap((pieces) =>
      Array.from({ length: Math.min(2, repeats) }, (_, index) =>
        pricedInstance(kind, pieces, index),
      ),
    );
    return pricedLine(all, `Five priced stocks, class ${kind}, ${all.length} sets`, target);
  });
}

/** Sets as published. */
function priced(folder: string): readonly FigureLine[] {
  return pricedClasses.flatMap(([kind, target]) => {
    const all = pricedSets(join(folder, '2d_rectangular/2dvsbpp'), kind);
    if (all.length === 0) return [];
    return pricedLine(all, `The same, class ${kind}, ${all.length} sets as published`, target);
  });
}

function strips(folder: string): readonly FigureLine[] {
  const uniform = ['binpack2.txt', 'binpack3.txt'].flatMap((name) => {
    const sets = uniformSets(join(folder, '1d/falkenauer', name));
    const all = sets.map(({ instance }) => timed(instance));
    const most = Math.max(...all.map(({ answer }, at) => answer.count - (sets[at]?.best ?? 0)));
    const proven = all.filter(({ answer }) => answer.proven).length;
    const size = sets[0]?.instance.parts.reduce((total, { count }) => total + count, 0) ?? 0;
    return [
      {
        what: `Strips, ${sets.length} uniform sets of ${size}: most over the best known; proven`,
        figure: `${most}; ${proven} of ${sets.length}`,
        target: '1; ≥ 90 %',
      },
      { what: 'The longest of them', figure: seconds(longest(all)), target: '' },
    ];
  });
  const counted = countedSets(join(folder, '1d/schwerin/SCH_WAE1.BPP')).map(timed);
  const proven = counted.filter(({ answer }) => answer.proven).length;
  return [
    ...uniform,
    {
      what: `Strips, ${counted.length} sets of 100 like sizes: proven`,
      figure: `${proven} of ${counted.length}`,
      target: 'all',
    },
  ];
}

function outlines(folder: string): readonly FigureLine[] {
  const root = join(folder, '2d_irregular');
  const sets = [
    ['shirts', vertexSet(join(root, 'shirts/shirts.txt'), 40), '≥ 84 %'],
    ['swim', vertexSet(join(root, 'swim/swim.txt'), 5752), '≥ 70.5 %'],
    ['albano', polygonSet(join(root, 'albano/albano.xml')), '≥ 85 %'],
    ['dagli', polygonSet(join(root, 'dagli/dagli.xml')), '≥ 84.5 %'],
  ] as const;
  return sets.map(([name, instance, target]) => {
    const { answer, time } = timed(instance);
    const what = `Outlines along a roll, ${name}: used, in ${seconds(time)}`;
    return { what, figure: `${(answer.utilisation * 100).toFixed(1)} %`, target };
  });
}

function doors(): readonly FigureLine[] {
  return [
    [2440, 1220, 1],
    [1220, 1220, 2],
    [1220, 610, 3],
  ].map(([length = 0, width = 0, target = 0]) => {
    const { answer, time } = timed({ ...doorsOn(length, width), effort: 'live' });
    const what = `42 boards of two pairs of doors on ${length} × ${width}, live, in ${milliseconds(time)}`;
    return { what, figure: `${answer.count} sheets`, target: `${target}, ≤ 150 ms` };
  });
}

function textbook(): FigureLine {
  const sizes = [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200];
  const counts = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20];
  const parts = sizes.map((length, at) => ({
    ...{ id: String(length), width: 0 },
    length,
    count: counts[at] ?? 0,
  }));
  const stocks = [{ id: 'roll', length: 5600, width: 0, price: 1 }];
  const { answer, time } = timed({ kind: 'strips', stocks, parts });
  return {
    what: 'Strips, the textbook order of 219 pieces: rolls, time',
    figure: `${answer.count}, ${seconds(time)}`,
    target: '73, ≤ 1 s',
  };
}

test('layouts', { timeout: 3_600_000 }, () => {
  const before = load();
  const folder = cutSets();
  const given =
    folder === undefined ? [] : [...priced(folder), ...strips(folder), ...outlines(folder)];
  record(
    'cutting',
    [...rectangles(), ...pricedDrawn(), ...given, textbook(), ...doors()],
    [before, load()],
  );
});
