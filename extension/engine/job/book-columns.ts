import { arealWeight, density, length, money, plain, time } from '../units/dimension.ts';
import type { Column } from './column.ts';
import { choice, columnTable, date, link, list, quantity, text, yesNo } from './column-table.ts';
import { priceColumns } from './price-columns.ts';

const source = text('source', 'source', 'Where the figure is from, or “shop must calibrate”.');
const note = text('note', 'note', 'Anything the next person should know.');

/** Keys of `[book]`. */
export const bookHead = columnTable('book', [
  [
    text('title', 'title', 'Name of the shop book.'),
    date('date', 'date', 'Day of its prices.'),
    text('currency', 'currency', 'Code of the currency of its prices.'),
  ],
  [choice('units', ['in', 'mm'], 'units', 'Unit that bare numbers get here.'), note],
]);

const material = columnTable('material', [
  [
    text('name', 'name', 'What the shop calls it.'),
    choice(
      'form',
      ['sheet', 'roll', 'strip', 'liquid', 'aerosol', 'piece'],
      'form',
      'How it comes, which decides how it is counted.',
    ),
    text('group', 'group', 'Heading on the shopping list.'),
  ],
  [
    quantity('thickness', length, 'thickness', 'Real thickness, not the nominal one.'),
    quantity('size', length, 'outside size', 'Outside of a tube, a dowel or a can.'),
  ],
  [
    quantity('length', length, 'stock length', 'As it is sold; for a roll, along it.'),
    quantity('width', length, 'stock width', 'As it is sold; for a roll, the bolt.'),
  ],
  [
    quantity('density', density, 'density', 'Turns mass into volume.'),
    quantity('weight', arealWeight, 'weight', 'Mass of a unit of area.'),
    quantity('solids', plain, 'solids', 'Share that stays when it is dry.'),
  ],
  [
    quantity('coverage', 'any', 'coverage', 'Area that a unit of it covers.'),
    quantity('waste', plain, 'waste', 'Share that is lost.'),
    choice('charge', ['packs', 'used'], 'charged by', 'Whole packs, or only what is used.'),
  ],
  [
    quantity('waste_low', plain, 'least waste', 'Share lost when all goes well.'),
    quantity('waste_high', plain, 'most waste', 'Share lost when it does not.'),
  ],
  [
    quantity('bend', length, 'bend, dry', 'Smallest inside radius it takes dry.'),
    quantity('bend_wet', length, 'bend, wet', 'Smallest inside radius it takes soaked.'),
    quantity('shelf_life', time, 'shelf life', 'How long it keeps, closed and cool.'),
  ],
  [
    choice('grain', ['none', 'length', 'width'], 'grain', 'Way that it bends or shows.'),
    choice('nap', ['none', 'one_way'], 'nap', 'Pieces must all lie one way.'),
    quantity('stretch', plain, 'stretch', 'How much further it can be pulled, both ways.'),
  ],
  [
    quantity('kerf', length, 'kerf', 'Width of the cut.'),
    quantity('trim', length, 'trim', 'Taken off every edge, or off both selvages.'),
    choice(
      'method',
      ['saw', 'free', 'outline'],
      'cut by',
      'Straight cuts from edge to edge; cuts anywhere; or shapes nested by their outlines.',
    ),
  ],
  [
    quantity('repeat', length, 'repeat', 'Of the pattern along the roll.'),
    quantity('lap', length, 'joint lap', 'Overlap where lengths are joined; none where blank.'),
    choice('search', ['refine', 'long'], 'search', 'How long layouts are bettered.'),
  ],
  [
    yesNo('openings', 'openings used', 'Smaller parts are cut from what falls out of openings.'),
    yesNo(
      'pairing',
      'strips paired',
      'Strips of leaning rings are cut two by two head to tail, one with its seam at the low side.',
    ),
  ],
  [
    text('unit', 'counted in', 'Word for one of it: each, pair, can, roll.'),
    list('substitutes', 'instead', 'Materials that can take its place.'),
  ],
  [link('supplier', ['supplier'], 'supplier', 'Where it is bought.')],
  [source, note],
]);

const pack = columnTable('pack', [
  [
    link('material', ['material'], 'material', 'What is in the pack.'),
    quantity('holds', 'any', 'holds', 'Amount in one pack.'),
    quantity('price', money, 'price', 'Of one pack.'),
  ],
  [
    quantity('step', 'any', 'cut in steps of', 'Smallest amount more that can be bought.'),
    quantity('rate', 'any', 'rate', 'Money for a unit, where it is cut to measure.'),
    quantity('least', 'any', 'at least', 'Least that is sold at once.'),
  ],
  [
    quantity('from', plain, 'cheaper from', 'Number of packs from which each costs less.'),
    quantity('price_from', money, 'lower price', 'Of one pack, where so many are bought.'),
  ],
  [
    quantity('length', length, 'length', 'Of the sheet, where it is not the material’s.'),
    quantity('width', length, 'width', 'Of the sheet or bolt, where it is not the material’s.'),
  ],
  [
    quantity('have', plain, 'on the shelf', 'How many there are, of an offcut or a rest.'),
    quantity(
      'shelf_life',
      time,
      'shelf life',
      'How long it keeps, where not as the material does.',
    ),
  ],
  [text('name', 'name', 'What the supplier calls it.'), source, note],
]);

const supplier = columnTable('supplier', [
  [
    text('name', 'name', 'What the shop calls them.'),
    quantity('minimum', money, 'minimum order', 'What an order comes to at least.'),
    quantity(
      'surcharge',
      money,
      'small order',
      'Added to an order of less; none is taken if blank.',
    ),
  ],
  [note],
]);

const constant = columnTable('constant', [
  [
    text('name', 'name', 'What the figure says.'),
    quantity('value', 'any', 'value', 'The figure with its unit.'),
    source,
  ],
  [note],
]);

const band = columnTable('band', [
  [
    text('chart', 'chart', 'Chart the band belongs to.'),
    quantity('from', 'any', 'from', 'Lower edge, which belongs to the band.'),
    quantity('to', 'any', 'to', 'Upper edge, which does not.'),
  ],
  [quantity('value', 'any', 'value', 'What the chart says in the band.'), source, note],
]);

const kind = columnTable('kind', [
  [
    text('name', 'name', 'What the kind is called.'),
    text('table', 'table', 'Table whose rows can be of this kind.'),
    choice(
      'group',
      ['structure', 'skin', 'finish', 'drivers', 'shop'],
      'group',
      'Heading its rows stand under.',
    ),
  ],
  [
    text('help', 'help', 'One line about it.'),
    list('on', 'on', 'Kinds that it may stand on.'),
    list('columns', 'columns', 'Columns of the row card, in order.'),
  ],
  [
    choice('takes', ['blank', 'strip', 'amount', 'none'], 'takes', 'How it uses its material.'),
    text('words', 'in words', 'Main size in words, with columns in braces.'),
    list('tasks', 'tasks', 'Kinds of task it calls for.'),
  ],
  [
    list('checks', 'checks', 'Kinds of check it calls for.'),
    list('knobs', 'knobs', 'Columns to turn.'),
  ],
  [
    list('steps', 'steps', 'Lines for the shop sheet.'),
    list('tools', 'tools', 'Tools needed.'),
    list('cautions', 'cautions', 'What can hurt.'),
  ],
  [
    list('hazards', 'hazards', 'Dangers it brings; the job’s cautions speak of them.'),
    yesNo('waits', 'waits', 'Time passes, but nobody works.'),
    source,
  ],
]);

const kit = columnTable('kit', [
  [text('name', 'name', 'What the kit is called.'), text('help', 'help', 'What it writes.')],
]);

const question = columnTable('question', [
  [
    link('kit', ['kit'], 'kit', 'Kit that asks.'),
    text('key', 'key', 'Word that stands for the answer in braces.'),
    text('label', 'question', 'The question.'),
  ],
  [
    text('help', 'help', 'One line about it.'),
    choice(
      'type',
      [
        'text',
        'id',
        'number',
        'length',
        'angle',
        'shape',
        'money',
        'choice',
        'row',
        'material',
        'yes-no',
      ],
      'type',
      'What may be answered.',
    ),
    list('of', 'of', 'Choices, kinds, tables or forms to choose from.'),
  ],
  [
    text('start', 'start', 'Answer that is offered.'),
    yesNo('required', 'required', 'It must be answered.'),
  ],
]);

const kitRow = columnTable('kit_row', [
  [
    link('kit', ['kit'], 'kit', 'Kit that writes the row.'),
    text('table', 'table', 'Table it is written in.'),
    text('row', 'row id', 'Id of the row, with answers in braces.'),
  ],
  [text('when', 'when', 'Answer that must not be empty or no.')],
]);

/** Tables of a shop book, in file order; a job may hold some of them for itself. */
export const bookTables: readonly (readonly [table: string, columns: readonly Column[]])[] = [
  ['material', material],
  ['pack', pack],
  ['supplier', supplier],
  ['constant', constant],
  ['price', priceColumns],
  ['band', band],
  ['kind', kind],
  ['kit', kit],
  ['question', question],
  ['kit_row', kitRow],
];
