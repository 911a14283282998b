import {
  angle,
  frequency,
  length,
  money,
  plain,
  temperature,
  time,
  volume,
} from '../units/dimension.ts';
import { askColumns } from './ask-columns.ts';
import type { Column } from './column.ts';
import { lockColumns } from './lock-columns.ts';
import { optionColumns } from './option-columns.ts';
import {
  choice,
  columnTable,
  date,
  link,
  list,
  quantity,
  shape,
  text,
  yesNo,
} from './column-table.ts';

const sure = choice(
  'sure',
  ['measured', 'guess', 'from_maker'],
  'how sure',
  'Where the figure is from: measured on the car or the part, a guess, or the maker’s sheet.',
);
const note = text('note', 'note', 'Anything the next person should know.');
const per = choice(
  'per',
  ['panel', 'job'],
  'per',
  'Counted for every panel, or once for the whole job.',
);

/** Keys of `[job]`. */
export const jobHead = columnTable('job', [
  [
    text('title', 'title', 'What this job is called on paper.'),
    text('client', 'client', 'Who it is for.'),
    text('vehicle', 'vehicle', 'Make, model and year of the car.'),
  ],
  [
    date('date', 'date', 'Day of the estimate.'),
    date('start', 'start', 'Day on which work begins.'),
    date('valid_until', 'valid until', 'Last day of the quote.'),
  ],
  [
    text('scope', 'scope', 'What is done, in a sentence for the client.'),
    text('exclusions', 'not included', 'What is not done, for the client.'),
    text('terms', 'terms', 'Payment, warranty, what else the client agrees to.'),
  ],
  [
    choice('units', ['in', 'mm'], 'units', 'Unit that lengths are shown in and bare numbers get.'),
    text('currency', 'currency', 'Code of the one currency of this job, such as USD.'),
    choice('fraction', ['16', '32'], 'finest fraction', 'Inches are shown to 1/16 or 1/32.'),
  ],
  [
    text('book', 'shop book', 'Path of the shop book, seen from this file.'),
    quantity('temperature', temperature, 'shop temperature', 'At the bench when resin is mixed.'),
    yesNo('use_stock', 'use stock', 'What is on the shelf is taken before anything is bought.'),
  ],
  [note],
  [
    text('template', 'template', 'Template that this job was made from, or that this file is.'),
    quantity('template_version', plain, 'template version', 'Counted up when a template changes.'),
  ],
]);

const panel = columnTable('panel', [
  [
    text('name', 'name', 'What the panel is: front door, kick panel.'),
    choice(
      'hands',
      ['pair', 'left', 'right', 'alike'],
      'hands',
      'A mirrored pair, one side only, or several alike.',
    ),
    quantity('count', plain, 'how many', 'Panels made; a pair is two unless told.'),
  ],
]);

const driver = columnTable('driver', [
  [
    text('name', 'name', 'The driver as the bench calls it.'),
    quantity('frame', length, 'frame', 'Outside of the frame (basket), measured.'),
    quantity('cutout', length, 'cut-out', 'Hole the driver drops into.'),
  ],
  [
    quantity('depth', length, 'room behind', 'From the mounting face to the back of the magnet.'),
    quantity('magnet', length, 'magnet', 'Widest part of the magnet or motor.'),
    quantity('cone', length, 'cone', 'Diameter of the moving cone, half the surround included.'),
  ],
  [
    quantity('excursion', length, 'excursion', 'How far the cone travels one way.'),
    quantity('displacement', volume, 'displacement', 'Space the driver takes inside a box.'),
  ],
  [
    quantity('fs', frequency, 'resonance (Fs)', 'Free-air resonance.'),
    quantity('qts', plain, 'total Q (Qts)', 'Damping of the driver at resonance.'),
    quantity('vas', volume, 'compliance (Vas)', 'Air as springy as the cone’s suspension.'),
  ],
  [
    quantity('price', money, 'price', 'For one, or for the pair where sold as a pair.'),
    choice('sold', ['each', 'pair'], 'sold', 'What the price buys.'),
    choice('supply', ['shop', 'client', 'in_car'], 'supplied by', 'Shop, client, or in the car.'),
  ],
  [link('supplier', ['supplier'], 'supplier', 'Where the shop buys it.')],
  [sure],
]);

const measure = columnTable('measure', [
  [
    text('name', 'name', 'What was measured, from where to where.'),
    quantity('value', 'any', 'value', 'The figure with its unit.'),
    sure,
  ],
  [note],
]);

const part = columnTable('part', [
  [
    text('name', 'name', 'What the bench calls this piece.'),
    link('kind', ['kind'], 'kind', 'What the row is: base, ring, skin…'),
    link('panel', ['panel'], 'panel', 'Panel it belongs to; blank: every panel.'),
  ],
  [
    link('on', ['part'], 'on', 'What it stands on, is applied to or goes with.'),
    link('driver', ['driver'], 'driver', 'Driver it carries.'),
    link('material', ['material'], 'material', 'What it is made of.'),
  ],
  [
    choice('hand', ['both', 'left', 'right'], 'hand', 'Side it is made for.'),
    shape(
      'shape',
      'shape',
      'Outline: circle, oval, rect, roundrect, polygon, or path to a drawing.',
    ),
    quantity('size', length, 'outside size', 'Diameter or width over the outside.'),
  ],
  [
    quantity('length', length, 'length', 'Of the blank that is cut.'),
    quantity('width', length, 'width', 'Of the blank that is cut.'),
    quantity('thickness', length, 'thickness', 'Of the finished layer.'),
  ],
  [
    quantity('depth', length, 'depth at centre', 'Base plane to the driver’s seat at the centre.'),
    quantity('tilt', angle, 'lean', 'How far the face leans from the base plane.'),
    quantity('turn', angle, 'lean to (clock)', 'Which way it leans, turned from straight up.'),
  ],
  [
    quantity('at_x', length, 'to the rear', 'Centre, rearward of the panel’s own zero.'),
    quantity('at_y', length, 'up', 'Centre, above the panel’s own zero.'),
    quantity(
      'seam',
      angle,
      'seam (clock)',
      'Where its strip meets itself, turned from straight up.',
    ),
  ],
  [
    choice('seat', ['wrap', 'top'], 'baffle sits', 'Inside the ring’s wall, or on top of it.'),
    choice(
      'build',
      ['round_baffle', 'round_tube', 'square_wall'],
      'build',
      'Round baffle over an oval wall, round tube with an oval lip, or wall square to the face.',
    ),
    quantity('layers', plain, 'layers', 'How many are laid.'),
  ],
  [
    quantity('percent', plain, 'percent', 'Share of what it goes into.'),
    quantity('spacing', length, 'spacing', 'From one fastener to the next.'),
    quantity('use', 'any', 'use', 'Material in one piece.'),
  ],
  [quantity('grit', plain, 'grit', 'Number of the abrasive that is used.')],
  [
    quantity('qty', plain, 'pieces', 'How many, for one panel unless per job.'),
    per,
    quantity('waste', plain, 'waste', 'Added for what is lost.'),
  ],
  [
    quantity('price', money, 'price', 'For a row without a material: what it costs.'),
    yesNo('taxed', 'taxed', 'Sales tax applies.'),
    yesNo('marked_up', 'marked up', 'The shop’s markup applies.'),
  ],
  [
    quantity('used', 'any', 'used', 'Material that the whole job took in the end, waste and all.'),
    note,
  ],
]);

const task = columnTable('task', [
  [
    text('name', 'name', 'What is done.'),
    link('kind', ['kind'], 'kind', 'Kind of work.'),
    link('on', ['part', 'driver', 'panel'], 'on', 'What it is done to.'),
  ],
  [
    quantity('basis', 'any', 'basis', 'How much there is to do: an area, a length, a count.'),
    quantity('setup', time, 'set-up', 'Once a job, before the first.'),
    quantity('rate', 'any', 'rate', 'Time for each unit of the basis.'),
  ],
  [
    quantity('minutes', time, 'time', 'For one panel unless per job.'),
    quantity('low', time, 'at best', 'When all goes well.'),
    quantity('high', time, 'at worst', 'When it does not.'),
  ],
  [
    quantity('people', plain, 'people', 'Hands needed at once.'),
    per,
    link('after', ['task'], 'after', 'Task that must be done first.'),
  ],
  [
    quantity('learn', plain, 'learning', 'Share of the time left when the count doubles, 85 %.'),
    text('who', 'who', 'Who does it; blank: anybody.'),
    note,
  ],
  [
    quantity(
      'actual',
      time,
      'time taken',
      'By the clock, set-up and all panels, when it was done.',
    ),
  ],
]);

const check = columnTable('check', [
  [
    text('name', 'name', 'What must hold.'),
    link('kind', ['kind'], 'kind', 'Kind of check.'),
    link('on', ['part', 'driver', 'panel'], 'on', 'What it looks at.'),
  ],
  [
    quantity('value', 'any', 'value', 'The figure that is checked.'),
    quantity('least', 'any', 'at least', 'The value may not be below this.'),
    quantity('most', 'any', 'at most', 'The value may not be above this.'),
  ],
  [
    quantity('near', 'any', 'near', 'Margin under which a pass is called near.'),
    choice('level', ['must', 'should'], 'level', 'Stops the job, or only warns.'),
  ],
  [note],
]);

const charge = columnTable('charge', [
  [
    text('name', 'name', 'Line on the quote.'),
    link('kind', ['kind'], 'kind', 'Labour, markup, tax, deposit…'),
    link('on', ['part', 'task', 'driver', 'panel', 'charge'], 'on', 'What it is charged on.'),
  ],
  [
    quantity('amount', money, 'amount', 'A fixed sum.'),
    quantity('percent', plain, 'percent', 'A share of what it is charged on.'),
    quantity('rate', 'any', 'rate', 'Money for each unit, such as an hour.'),
  ],
  [
    text('of', 'of', 'labour, materials, all, a group, or ids, with commas between them.'),
    yesNo('taxed', 'taxed', 'Sales tax applies; blank: as what it is charged on.'),
    note,
  ],
]);

const column = columnTable('column', [
  [
    text('table', 'table', 'Table that gets the column.'),
    text('key', 'key', 'Word in the file and in formulas; the id unless told.'),
    text('label', 'label', 'Heading in the grid.'),
  ],
  [
    text('help', 'help', 'One line about it.'),
    text('type', 'type', 'text, yes_no, date, number, choice, shape, a table, or a dimension.'),
    list('choices', 'choices', 'Words a choice offers.'),
  ],
]);

/** Tables of a job, in file order. */
export const jobTables: readonly (readonly [table: string, columns: readonly Column[]])[] = [
  ['panel', panel],
  ['driver', driver],
  ['measure', measure],
  ['part', part],
  ['task', task],
  ['check', check],
  ['charge', charge],
  ['column', column],
  ['ask', askColumns],
  ['option', optionColumns],
  ['lock', lockColumns],
];
