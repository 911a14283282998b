import { problemMaker } from '../problems.ts';

/** Problems of outlines of their own form: typed points and drawing files. */
export const outlineProblem = problemMaker({
  'outline-address-wrong':
    'path("{address}") names no outline file: write where it lies beside the job, such as path("outlines/door.svg#left"), with forward slashes and no “..”. Outline files lie in the folder of the job or in folders within it.',
  'outline-kind-unknown':
    'path("{address}"): {file} is neither an SVG nor a DXF drawing; its name must end in .svg or .dxf.',
  'outline-not-read-here':
    'path("{address}") needs a job: outline files are read beside a job file only. Write a shape with sizes, or a polygon with points.',
  'outline-on-its-way': '{file} is being read.',
  'outline-missing':
    '{file} cannot be read; it must lie beside the job file. Put it there, or mend the name in path("{address}").',
  'outline-unreadable': '{file} is no drawing that can be read: {reason}.',
  'outline-too-long':
    '{file} holds {size} million characters; outline files may have {most}. Save the outline alone.',
  'outline-unit-wrong':
    'path("{address}", {unit}): the size of one unit of the drawing must be more than nothing, such as 1 mm.',
  'outline-without-unit':
    '{file} does not say what its numbers are in. Write it once, as the size of one unit of the drawing: path("{address}", 1mm) or path("{address}", 1in).',
  'outline-name-unknown': '{file} has no {word} “{name}” with an outline. It has: {names}.',
  'outline-empty': '{what} holds no outline{unread}.',
  'outline-several':
    '{what} holds {count} outlines; name one of them by its {word}, such as path("{file}#{name}").',
  'outline-open':
    '{what} is open: its line ends at {from} and goes on at {to}, {gap} away. Close it in the drawing.',
  'outline-branches':
    '{what} branches at {at}: more than two lines meet there. Take out the lines that are not its edge.',
  'outline-doubled':
    '{what} is drawn twice over at {at}: two of its lines lie on each other. Take one out.',
  'outline-crossing': '{what} crosses itself at {at}. Pull its lines apart there.',
  'outline-without-area':
    '{what} encloses nothing: its points lie on one line. Draw round the panel.',
  'outline-tiny':
    '{what} is {length} × {width}, too small for a part. Perhaps the drawing is in other units: write the size of one unit, such as path("{address}", {unit}).',
  'outline-huge':
    '{what} is {length} × {width}, larger than any panel. Perhaps the drawing is in other units: write the size of one unit, such as path("{address}", {unit}).',
  'polygon-points-odd':
    'polygon takes the x and the y of each point in turn; these are {given} sizes, so one is missing.',
  'polygon-points-few': 'polygon needs three points or more, x and y of each; these are {given}.',
  'polygon-size': '{what} is {length} × {width}; a part is between {least} and {most} long.',
});
