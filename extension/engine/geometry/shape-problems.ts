import { problemMaker } from '../problems.ts';

/** Problems of shapes: sizes that make no outline, texts that are no shape. */
export const shapeProblem = problemMaker({
  'shape-size-not-positive': 'The {size} of {shape} is {value}; it must be more than nothing.',
  'shape-radius-negative':
    'The corner radius of {shape} is {value}; it cannot be less than nothing.',
  'shape-radius-too-large':
    'The corner radius of {shape} is {value}, more than half its short side; at most {most} fits.',
  'shape-not-read':
    '“{text}” is not a shape; write circle(d), oval(l, w), rect(l, w) or roundrect(l, w, r), such as {example}; or polygon(x, y, …) through points, or path("file.svg#id") for a drawing beside the job.',
  'shape-sizes-miscounted':
    '{word} takes {wanted}, but “{text}” gives {given}; write one such as {example}.',
});
