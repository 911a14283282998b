import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Expression } from '../../../extension/engine/formula/expression.ts';
import { expressionText } from '../../../extension/engine/formula/expression-text.ts';
import { parseFormula } from '../../../extension/engine/formula/parse.ts';

function read(text: string): Expression {
  const { expression, problems } = parseFormula(text);
  if (expression === undefined) throw new Error(problems[0]?.message ?? 'nothing');
  return expression;
}

/** The tree with every operation in brackets. */
function shown(expression: Expression): string {
  switch (expression.kind) {
    case 'unary':
      return `(${expression.operator}${shown(expression.operand)})`;
    case 'percent':
      return `(${shown(expression.operand)}%)`;
    case 'binary':
      return `(${shown(expression.left)} ${expression.operator} ${shown(expression.right)})`;
    case 'call':
      return `${expression.name}(${expression.args.map((one) => (one === undefined ? '' : shown(one))).join('; ')})`;
    default:
      return expressionText(expression);
  }
}

function tree(text: string): string {
  return shown(read(text));
}

function base(text: string): number {
  const expression = read(text);
  return expression.kind === 'quantity' ? expression.value.base : Number.NaN;
}

function faultOf(text: string): string {
  return parseFormula(text).problems[0]?.message ?? '';
}

describe('parseFormula: operators', () => {
  // OpenFormula (OpenDocument 1.3 part 4, section 5.5): a sign binds before ^, and ^ goes left to right.
  test.each([
    ['=-2^2', '((-2) ^ 2)'],
    ['=2^3^2', '((2 ^ 3) ^ 2)'],
    ['=2^-1', '(2 ^ (-1))'],
    ['=2+3*4^2', '(2 + (3 * (4 ^ 2)))'],
    ['=8/4/2', '((8 / 4) / 2)'],
    ['=5--2', '(5 - (-2))'],
    ['="a"&"b"="ab"', '(("a" & "b") = "ab")'],
    ['=1+2<>3', '((1 + 2) <> 3)'],
    ['=layers%*2', '((layers%) * 2)'],
    ['=(1+2)*3', '((1 + 2) * 3)'],
    ['=length * width', '(length * width)'],
    ['=2 × 3 ÷ 4 − 1', '(((2 * 3) / 4) - 1)'],
  ])('%s is read as %s', (text, brackets) => {
    expect(tree(text)).toBe(brackets);
  });

  test('arguments stand between commas or semicolons, and one may be left empty', () => {
    expect(tree('=max(1, 2; 3)')).toBe('MAX(1; 2; 3)');
    expect(tree('=IF(taxed;;)')).toBe('IF(taxed; ; )');
    expect(tree('=PI()')).toBe('PI()');
  });

  test('a quote inside a text is written twice', () => {
    const expression = read('="a ""b"" c"');
    expect(expression.kind === 'text' ? expression.text : '').toBe('a "b" c');
  });

  test('TRUE and FALSE need no brackets', () => {
    expect(tree('=TRUE=FALSE')).toBe('(TRUE() = FALSE())');
  });
});

describe('parseFormula: measures', () => {
  test.each([
    ['=1/16in', 1.5875],
    ['=1 3/8in', 34.925],
    ['=1 3/8 in', 34.925],
    ['=0.5in', 12.7],
    ['=.5in', 12.7],
    ['=15deg', Math.PI / 12],
    ['=1.5%', 0.015],
    ['=1 1/2%', 0.015],
    ['=2 sq ft', 185_806.08],
    ['=70degF', 190 / 9],
    ['=-10degF', -210 / 9],
    ['=1e3mm', 1000],
  ])('%s is one value', (text, value) => {
    expect(base(text)).toBeCloseTo(value, 9);
  });

  test('a unit binds tighter than any operator', () => {
    expect(tree('=length + 1/16in')).toBe('(length + 1/16 in)');
    expect(tree('=length*2 3/8in')).toBe('(length * 2 3/8 in)');
    expect(tree('=9.5USD/yd*2yd')).toBe('(9.5 USD/yd * 2 yd)');
    expect(tree('=length/2in')).toBe('(length / 2 in)');
    expect(tree('=-1/2in')).toBe('(-1/2 in)');
  });

  test('a division with spaces at its slash is a division', () => {
    expect(tree('=3 / 4in')).toBe('(3 / 4 in)');
    expect(tree('=1/2')).toBe('(1 / 2)');
  });

  test('a slash before a function does not make a unit of its name', () => {
    expect(tree('=10in/min(2,3)')).toBe('(10 in / MIN(2; 3))');
  });

  test('a sign belongs to a temperature, and is taken from any other measure', () => {
    expect(tree('=-10degC')).toBe('-10 degC');
    expect(tree('=5degC-10degC')).toBe('(5 degC - 10 degC)');
  });

  test('the currency is the one of the job', () => {
    expect(parseFormula('=5EUR', { units: 'mm', currency: 'EUR' }).problems).toEqual([]);
    expect(faultOf('=5EUR')).toContain('this job is in USD');
  });

  test.each([
    ['=5-1/2in', '5 1/2in', '5 - 1/2in'],
    ['=1/2%', '0.5%', '1/(2%)'],
    ['=24/2in', '(24/2)*1in', '24/(2in)'],
    ['=3/4in^2', '(3/4in)^2', '3/4sqin'],
    ['=5in^2', '(5in)^2', '5sqin'],
    ['=5%2', '5%*2', 'MOD(5, 2)'],
    ['=layers%2', 'layers%*2', 'MOD(layers, 2)'],
    ['=5"', '5in', '"5"'],
    ["=2'", '2ft', '2min'],
    ['=length/3/4in', '(3/4in)', '3 / (4in)'],
    ['=5 1/2"', '5 1/2in', '"5 1/2"'],
  ])('%s can be read in two ways and is refused with both', (text, first, second) => {
    const { expression, problems } = parseFormula(text);
    expect(expression).toBeUndefined();
    expect(problems[0]?.code).toBe('literal-ambiguous');
    expect(problems[0]?.message).toContain(`write ${first} or ${second}`);
    for (const way of [first, second]) expect(parseFormula(`=${way}`).problems).toEqual([]);
  });

  test('a mixed fraction without a unit is not guessed', () => {
    expect(faultOf('=1 3/8')).toBe(
      '1 3/8 has no unit; write 1 3/8in for a length or 1 + 3/8 for a plain number.',
    );
  });
});

describe('parseFormula: names', () => {
  test('a path is words at dots, each with its range', () => {
    const expression = read('=base.area');
    expect(expression.kind === 'path' ? expression.steps : []).toEqual([
      { word: 'base', span: { start: 1, end: 5 } },
      { word: 'area', span: { start: 6, end: 10 } },
    ]);
  });

  test.each([
    '=all(ring).wall',
    '=on(base, ring).wall',
    '=on(on.material, ring, tube_ring).wall',
    '=all(ring).draw.glue.use',
  ])('%s is a list', (text) => {
    expect(read(text).kind).toBe('list');
    expect(expressionText(read(text))).toBe(text.slice(1));
  });

  test('all and on are columns and links where no bracket follows', () => {
    expect(tree('=on.area + all')).toBe('(on.area + all)');
  });

  test('a unit of two words and a percent sign may be arguments', () => {
    expect(tree('=SHOW(area, sq ft)')).toBe('SHOW(area; sqft)');
    expect(tree('=SHOW(layers, %)')).toBe('SHOW(layers; %)');
  });
});

describe('parseFormula: faults', () => {
  test.each([
    ['length', 'A formula begins with =; write =length.', 0, 6],
    ['=', 'There is nothing after the =; write a formula such as =length * width.', 0, 1],
    ['=2*', 'A value is missing after * at the end.', 2, 3],
    ['=*2', 'A value is missing after =.', 1, 2],
    [
      '=length width',
      'Between length and width an operator such as + or * is missing; write one.',
      1,
      13,
    ],
    [
      '=MAX(length width)',
      'Between length and width an operator such as + or * is missing; write one.',
      5,
      17,
    ],
    ['=2ft 3in', '2ft 3in are two values; write 2ft + 3in.', 1, 8],
    ['=MAX(2ft 3in)', '2ft 3in are two values; write 2ft + 3in.', 5, 12],
    ['=(1+2', 'The bracket opened after = is not closed; write a ) for it.', 1, 2],
    ['=max(1, ', 'The bracket opened after max is not closed; write a ) for it.', 1, 5],
    ['=1+2)', 'This ) closes nothing; take it away or open a bracket before it.', 4, 5],
    ['="ab', 'The text "ab has no closing "; write "ab".', 1, 4],
    ['=base.', 'After base. the name of a column is missing.', 5, 6],
    [
      '=all(ring)',
      'all(ring) is a list of rows; say which column is meant, such as all(ring).length.',
      1,
      10,
    ],
    ['=on(base).x', 'Inside on(…) a kind is missing; write on(base, ring).wall.', 1, 9],
    ['=all(2).x', 'Inside all(…) a kind is missing; write all(ring).wall.', 5, 6],
    ['=3inches', '“inches” is not written here; write in.', 1, 8],
    [
      '=$5',
      '“$” has no meaning in a formula; an amount of money is written with its code, such as 5USD.',
      1,
      2,
    ],
    ['=A1:A3', '“:” has no meaning in a formula; a list is written all(ring).wall.', 3, 4],
  ])('%s: %s', (text, message, start, end) => {
    const { expression, problems } = parseFormula(text);
    expect(expression).toBeUndefined();
    expect(problems[0]).toMatchObject({ message, span: { start, end } });
  });

  test('a comma outside of a function is not a decimal comma', () => {
    expect(faultOf('=1,5')).toContain('a decimal is written 1.5');
  });

  test('nesting without end and endless formulas are refused, not run out of', () => {
    expect(faultOf(`=${'('.repeat(5000)}`)).toContain('too long');
    expect(faultOf(`=${'-'.repeat(5000)}1`)).toContain('too long');
    expect(faultOf(`=1${'+1'.repeat(5000)}`)).toContain('too long');
  });

  test('any text gives a tree or problems, never an exception', () => {
    const pieces = fc.constantFrom(
      ...[
        '1',
        '/',
        '2',
        'in',
        '%',
        '^',
        '(',
        ')',
        ',',
        '.',
        '"',
        "'",
        ' ',
        '-',
        'all(',
        'base',
        'MAX(',
        '½',
      ],
    );
    const text = fc.oneof(
      fc.string(),
      fc.array(pieces).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(text, (written) => {
        const { expression, problems } = parseFormula(`=${written}`);
        expect(expression === undefined).toBe(problems.length > 0);
        for (const { span } of problems) {
          expect(span).toBeDefined();
          expect(span?.end).toBeLessThanOrEqual(written.length + 1);
        }
      }),
    );
  });

  test('a tree quoted as text reads back as the same tree', () => {
    const leaf = fc.constantFrom('length', 'base.area', '2', '1/16 in', '15 deg', '"a"', 'PI()');
    const formula = fc.letrec<{ node: string }>((tie) => ({
      node: fc.oneof(
        { depthSize: 'small' },
        leaf,
        fc
          .tuple(tie('node'), fc.constantFrom('+', '-', '*', '/', '^', '&', '<'), tie('node'))
          .map(([left, operator, right]) => `(${left}) ${operator} (${right})`),
        tie('node').map((inner) => `-(${inner})`),
        tie('node').map((inner) => `MAX(${inner}, 2)`),
      ),
    })).node;
    fc.assert(
      fc.property(formula, (written) => {
        const first = read(`=${written}`);
        expect(shown(read(`=${expressionText(first).replaceAll(/(\d) (in|deg)/g, '$1$2')}`))).toBe(
          shown(first),
        );
      }),
    );
  });
});
