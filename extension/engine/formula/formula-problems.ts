import { problemMaker } from '../problems.ts';

/** Faults of how a formula is written. */
export const syntaxProblem = problemMaker({
  'formula-no-equals': 'A formula begins with =; write ={text}.',
  'formula-empty': 'There is nothing after the =; write a formula such as =length * width.',
  'formula-too-long': 'This formula is too long to follow; split it over two cells.',
  'formula-character': '“{character}” has no meaning in a formula{hint}.',
  'formula-text-open': 'The text {text} has no closing "; write {better}.',
  'formula-value-missing': 'A value is missing {where}.',
  'formula-operator-missing':
    'Between {left} and {right} an operator such as + or * is missing; write one.',
  'formula-join-units': '{left} {right} are two values; write {left} + {right}.',
  'formula-bracket-open': 'The bracket opened after {after} is not closed; write a ) for it.',
  'formula-bracket-extra': 'This ) closes nothing; take it away or open a bracket before it.',
  'formula-separator':
    'A “{separator}” stands only between the arguments of a function; a decimal is written 1.5.',
  'formula-dot': 'After {path}. the name of a column is missing.',
  'formula-list-kind': 'Inside {form}(…) a kind is missing; write {example}.',
  'formula-list-column':
    '{list} is a list of rows; say which column is meant, such as {list}.length.',
  'literal-ambiguous': '{text} can be read in two ways; write {first} or {second}.',
  'literal-mixed-no-unit':
    '{text} has no unit; write {text}{unit} for a length or {whole} + {fraction} for a plain number.',
});

/** Faults of what a formula means: names, dimensions, arguments. */
export const formulaProblem = problemMaker({
  'name-unknown': '“{name}” is not a name here.{suggestion}',
  'name-is-unit': '“{name}” is a unit, not a name; write a number before it, such as 2{name}.',
  'function-unknown': 'There is no function {name}.{suggestion}',
  'function-absent': '{name} is not available: {reason}.',
  'function-needs-brackets': '{name} is a function; write {name}({parameters}).',
  'function-rows': '{name} is worked out row by row and cannot take a list.',
  'argument-count': '{name} takes {wanted}, not {given}: {signature}.',
  'argument-empty': '{name} has nothing for {parameter}: {signature}.',
  'argument-dimension': '{name} wants {wanted} for {parameter}, but {argument} is {found}.',
  'argument-no-unit':
    '{name} wants {wanted} for {parameter}; write {argument} with its unit, such as {example}.',
  'argument-differs':
    '{name}: {first} is {firstFound} and {second} is {secondFound}; both must be the same.',
  'argument-choice': '{name} has no choice {argument} for {parameter}; write {choices}.',
  'argument-choice-quoted': 'A choice is written without quotes: {word}.',
  'argument-row': '{name} wants a row for {parameter}, such as base or on, not {argument}.',
  'argument-unit': '{argument} is not a unit; write one such as {example}.',
  'argument-unit-differs':
    '{unit} is {unitFound}, but {argument} is {found}; write a unit such as {example}.',
  'argument-criterion':
    'The criterion {criterion} cannot be compared with {found}; write one such as {example}.',
  'argument-criterion-computed':
    'A criterion for {found} is written out, such as {example}; it cannot be worked out by a formula.',
  'argument-temperature':
    '{argument} is a temperature on a scale, and {name} has no meaning for one.',
  'round-dimension':
    '{name} cuts decimals of a plain number, but {argument} is {found}; write {better}.',
  'list-not-here': '{list} is a list; use it inside a function such as SUM({list}) or MAX({list}).',
  'list-mixed': '{list} mixes dimensions: {first} is {firstFound} and {second} is {secondFound}.',
  'list-product':
    'The product of {list} would change its dimension with every row; only a list of plain numbers is multiplied.',
  'row-not-value': '{name} is a row; write {name}.length or another of its columns.',
  'cannot-add':
    '{left} {operator} {right}: {leftFound} and {rightFound} cannot be {done}.{suggestion}',
  'cannot-compare':
    '{left} {operator} {right}: {leftFound} and {rightFound} cannot be compared.{suggestion}',
  'cannot-multiply':
    '{left} {operator} {right}: a temperature on a scale can be compared, or a difference taken, but not {done}.',
  'cannot-calculate': '{operand} is {found}; {operator} works on numbers.',
  'cannot-percent':
    '{operand}%: {operand} is {found}, and only a plain number can be a percentage.',
  'cannot-negate':
    '-{operand}: a temperature on a scale has no opposite; a sign belongs to its number, such as -10degF.',
  'exponent-dimension': '{left} ^ {right}: an exponent is a plain number, but {right} is {found}.',
  'exponent-not-constant':
    '{left} ^ {right}: {left} is {found}, so its exponent must be written as a number, such as 2 or 0.5.',
  'exponent-uneven':
    '{left} ^ {right}: {found} to the power {right} is not a dimension; use a half or a whole number.',
  'text-dimension': '{operand} is {found}; text takes it through SHOW({operand}).',
  'branches-differ':
    '{name} gives {first} ({firstFound}) or {second} ({secondFound}); both must be the same.{suggestion}',
  'answer-dimension': 'This formula gives {found}, but {wanted} is wanted here.{suggestion}',
  'answer-choice': 'This formula gives {found}, but one of {choices} is wanted here.',
  'zero-temperature': 'Zero degrees is written with its unit: 0degF or 0degC.',
});
