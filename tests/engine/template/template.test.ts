import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import type { Edit } from '../../../extension/engine/job/source.ts';
import type { Result } from '../../../extension/engine/result.ts';
import { answerEdits } from '../../../extension/engine/template/answer-asks.ts';
import { askProblems } from '../../../extension/engine/template/check-asks.ts';
import { jobFromTemplate } from '../../../extension/engine/template/make-job.ts';
import { asksOf } from '../../../extension/engine/template/read-asks.ts';
import {
  askableCells,
  templateFromJob,
  templateWord,
} from '../../../extension/engine/template/save-template.ts';
import { askFaults } from '../../../extension/engine/template/settle-ask.ts';
import { takeEdits, templateNews } from '../../../extension/engine/template/template-news.ts';
import { ownTemplates, readTemplate } from '../../../extension/engine/template/template.ts';

const shelf = `format = 1

[job]
title = "Shelf"
client = "Somebody"

units = "in"
currency = "USD"

note = "One shelf, its size asked for."

template = "shelf"
template_version = 2

[[panel]]
id = "shelf"

name = "Shelf"
hands = "pair"

[[measure]]
id = "room"

name = "Room under it"
value = "3 in"

[[part]]
id = "board"

name = "Board"
kind = "base"
panel = "shelf"

material = "hardboard_6"
shape = "rect(24 in, 12 in)"

[[part]]
id = "trim"

name = "Trim"
kind = "edge_trim"

on = "board"

[[ask]]
id = "hands"

name = "Hands"
sets = ["shelf.hands"]

order = 1000

[[ask]]
id = "the_room"

name = "Room"
sets = ["room.value"]

start_mm = "76 mm"

least = "2 in"
most = "6 in"

order = 2000

[[ask]]
id = "with_trim"

name = "Trim"

keeps = ["trim"]

order = 3000

[[ask]]
id = "outline"

name = "Outline"
sets = ["board.shape"]

order = 4000
`;

const inches = { units: 'in', currency: 'USD' } as const;

function done(text: string, edits: Result<readonly Edit[]>): string {
  if (!edits.ok) throw new Error(edits.problem.message);
  const applied = applyEdits(readFile(text), edits.value);
  if (!applied.ok) throw new Error(applied.problem.message);
  return applied.value.reading.text;
}

function value<Value>(result: Result<Value>): Value {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}

describe('asksOf', () => {
  test('offers what stands in the cell, and knows from its column what may be answered', () => {
    expect(asksOf(readFile(shelf)).map(({ id, form, start }) => [id, form.kind, start])).toEqual([
      ['hands', 'choice', 'pair'],
      ['the_room', 'quantity', '3 in'],
      ['with_trim', 'yes-no', 'yes'],
      ['outline', 'shape', 'rect(24 in, 12 in)'],
    ]);
  });
});

describe('askFaults', () => {
  const asks = asksOf(readFile(shelf));
  const told = (answers: Readonly<Record<string, string>>): readonly string[] =>
    askFaults(asks, answers, inches).map(({ problem }) => problem.message);

  test('what is offered is fine, and so is another unit within the limits', () => {
    expect(told({})).toEqual([]);
    expect(told({ the_room: '100 mm' })).toEqual([]);
    expect(told({ the_room: '6' })).toEqual([]);
  });

  test('limits, forms and dimensions are told with the name of the question', () => {
    expect(told({ the_room: '1 in' })).toEqual(['Room: 1 in is below the least, 2 in.']);
    expect(told({ the_room: '200 mm' })).toEqual(['Room: 200 mm is above the most, 6 in.']);
    expect(told({ hands: 'both' })[0]).toContain('choose one of pair, left, right, alike');
    expect(told({ the_room: '3 qt' })[0]).toMatch(/^Room: /);
    expect(told({ the_room: '' })).toEqual(['Room: an answer is needed.']);
    expect(told({ outline: 'hexagon(3 in)' })[0]).toMatch(/^Outline: /);
  });
});

describe('answerEdits', () => {
  test('answers go into their cells, rows that are not wanted go, and the questions with them', () => {
    const answers = { the_room: '4 1/2', with_trim: 'no', outline: 'rect(20, 10)' };
    const text = done(shelf, answerEdits(readFile(shelf), answers));
    const job = readFile(text);
    expect(job.tables.get('ask') ?? []).toEqual([]);
    expect(job.tables.get('measure')?.[0]?.cells.get('value')?.text).toBe('4 1/2 in');
    expect(job.tables.get('part')?.map(({ id }) => id)).toEqual(['board']);
    expect(job.tables.get('part')?.[0]?.cells.get('shape')?.text).toBe('rect(20 in, 10 in)');
  });

  test('answers as offered change no cell', () => {
    const edits = value(answerEdits(readFile(shelf), {}));
    expect(edits.every((edit) => edit.kind === 'delete-row')).toBe(true);
  });

  test('an answer to what is not asked is refused with what is asked', () => {
    const edits = answerEdits(readFile(shelf), { width: '3 in' });
    expect(edits).toMatchObject({
      ok: false,
      problem: {
        message:
          'The template asks nothing called “width”; it asks for hands, the_room, with_trim, outline.',
      },
    });
  });
});

describe('jobFromTemplate', () => {
  const start = { title: 'Shelf for A', date: '2026-11-25', ...inches, book: 'shop.panelbook' };

  test('the job has a head of its own and remembers template and version', () => {
    const { head } = readFile(value(jobFromTemplate(shelf, start)));
    const texts = Object.fromEntries([...head].map(([key, { text }]) => [key, text]));
    expect(texts).toEqual({
      title: 'Shelf for A',
      date: '2026-11-25',
      units: 'in',
      currency: 'USD',
      book: 'shop.panelbook',
      template: 'shelf',
      template_version: '2',
    });
  });

  test('in a job in mm the questions offer mm', () => {
    const text = value(jobFromTemplate(shelf, { ...start, units: 'mm' }));
    expect(asksOf(readFile(text)).find(({ id }) => id === 'the_room')?.start).toBe('76 mm');
  });
});

describe('templateFromJob', () => {
  const job = shelf.slice(0, shelf.indexOf('[[ask]]'));
  const cells = askableCells(readFile(job));

  test('cells that are decisions can be asked for: no formulas, kinds or names', () => {
    expect(cells.map(({ name, text }) => `${name} = ${text}`)).toEqual([
      'Shelf: hands = pair',
      'Room under it = 3 in',
      'Board: material = hardboard_6',
      'Board: shape = rect(24 in, 12 in)',
    ]);
  });

  test('the template asks for what was chosen and says nothing of the client', () => {
    const asks = cells.filter(({ text }) => text !== 'hardboard_6');
    const text = value(templateFromJob(job, { name: 'Wide shelf', help: 'For vans.', asks }));
    const template = readTemplate(text);
    expect(template).toMatchObject({
      name: 'Wide shelf',
      word: 'wide_shelf',
      help: 'For vans.',
      version: 1,
    });
    expect(template.reading.head.has('client')).toBe(false);
    expect(askProblems(template.reading)).toEqual([]);
    expect(template.asks.map(({ start }) => start)).toEqual(['pair', '3 in', 'rect(24 in, 12 in)']);
  });

  test('saved again over itself it counts its version up', () => {
    const start = { name: 'Wide shelf', help: '', asks: [] };
    const first = value(templateFromJob(job, start));
    expect(readTemplate(value(templateFromJob(job, start, first))).version).toBe(2);
  });
});

describe('templateWord', () => {
  test('is a word in small letters', () => {
    expect(templateWord('Rear Deck, 6 1/2" pods')).toBe('rear_deck_6_1_2_pods');
    expect(templateWord('??')).toBe('ask');
  });
});

describe('templateNews', () => {
  const job = readFile(
    done(shelf, answerEdits(readFile(shelf), { with_trim: 'no' })).replace(
      'template_version = 2',
      'template_version = 1',
    ),
  );

  test('tells rows of the template that the job lacks, and takes them in one edit', () => {
    const news = templateNews(job, readFile(shelf));
    expect(news).toMatchObject({ was: 1, now: 2 });
    expect(news.rows.map(({ id, kind }) => `${kind} ${id}`)).toEqual(['edge_trim trim']);
    const after = readFile(done(job.text, { ok: true, value: takeEdits(news, news.rows) }));
    expect(after.tables.get('part')?.map(({ id }) => id)).toContain('trim');
    expect(after.head.get('template_version')?.text).toBe('2');
    expect(templateNews(after, readFile(shelf)).rows).toEqual([]);
  });
});

describe('renaming a row', () => {
  test('[J20] questions follow a row that is renamed', () => {
    const edit = { kind: 'rename-row', row: { table: 'part', id: 'board' }, id: 'plank' } as const;
    const text = done(shelf, { ok: true, value: [edit] });
    expect(text).toContain('sets = ["plank.shape"]');
    expect(askProblems(readFile(text))).toEqual([]);
  });
});

describe('askProblems', () => {
  test('a question of no cell, of an unknown cell and of an unknown row are told', () => {
    const text = shelf
      .replace('sets = ["shelf.hands"]', 'sets = ["shelf.hand", "shelve.hands"]')
      .replace('keeps = ["trim"]', 'keeps = ["rim"]')
      .replace('sets = ["board.shape"]\n', '')
      .replace('least = "2 in"', 'least = "4 in"');
    expect(askProblems(readFile(text)).map(({ code }) => code)).toEqual([
      'ask-cell-unknown',
      'ask-cell-unknown',
      'ask-row-unknown',
      'ask-empty',
      'ask-start-unfit',
    ]);
  });

  test('an ordinary job has none', () => {
    expect(askProblems(readFile(shelf.slice(0, shelf.indexOf('[[ask]]'))))).toEqual([]);
  });
});

describe('ownTemplates', () => {
  test('five come with the program, each with a word of its own', () => {
    expect(new Set(ownTemplates().map(({ word }) => word)).size).toBe(5);
  });
});
