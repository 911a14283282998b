import { problemMaker } from '../problems.ts';

/** Problems of reading a value with its unit. `{example}` is a value as it should be written here. */
export const unitProblem = problemMaker({
  'value-empty': 'There is no value here; write one such as {example}.',
  'value-not-a-number': '“{text}” does not begin with a number; write a value such as {example}.',
  'value-comma': '“{text}” has a comma in its number; write {better}.',
  'value-fraction-top-heavy':
    '{fraction} has a top that is not smaller than its bottom; write {better}.',
  'value-fraction-of-nothing': '{fraction} divides by nothing; write a value such as {example}.',
  'value-fraction-of-decimal':
    '“{text}” mixes a decimal and a fraction; write one of the two, such as {example}.',
  'value-left-over':
    '“{text}” goes on after {read} with “{rest}”; write one value, such as {example}.',
  'value-parts-out-of-order':
    '“{text}” joins {first} and {second}; only ft with in, lb with oz, and h with min or s may be joined, larger first.',
  'unit-unknown': '“{unit}” is not a unit here; write a value such as {example}.',
  'unit-respelt': '“{unit}” is not written here; write {better}.',
  'unit-other-currency':
    '“{text}” is in {code}, but this job is in {currency}; write the amount in {currency}.',
  'unit-missing': '{text} has no unit; {wanted} is wanted here, such as {example}.',
  'unit-wrong-dimension': '{text} is {found}, but {wanted} is wanted here, such as {example}.',
  'unit-ounce-of-what':
    '{text} is a mass, but a volume is wanted here; fluid ounces are written floz: {better}.',
  'count-word-not-wanted': '{text} is a count, but {wanted} is wanted here, such as {example}.',
  'temperature-not-difference':
    '{text} is a temperature, but a difference is wanted here; write {better}.',
  'temperature-not-point':
    '{text} is a difference, but a temperature is wanted here; write {better}.',
});
