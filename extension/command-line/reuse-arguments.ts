import type { Asking, Shape, Words } from './argument-shape.ts';

/** What templates, shop books and stock are asked for on the command line. */
export type ReuseRequest =
  | { readonly command: 'templates'; readonly json: boolean }
  | {
      readonly command: 'new';
      /** Word or name of a built-in template, or the path of a file. */
      readonly template: string;
      /** `id=answer`, as it was written. */
      readonly answers: readonly string[];
      readonly out: string;
      readonly title: string | undefined;
      readonly units: 'in' | 'mm';
      readonly currency: string;
      readonly book: string | undefined;
      readonly date: string | undefined;
    }
  | {
      readonly command: 'freeze';
      readonly file: string;
      readonly date: string | undefined;
      /** Lets the job follow the book again. */
      readonly release: boolean;
      readonly write: boolean;
    }
  | {
      readonly command: 'prices';
      readonly book: string;
      /** List of prices; undefined for what is piped in. */
      readonly list: string | undefined;
      readonly date: string | undefined;
      readonly write: boolean;
    }
  | {
      readonly command: 'substitute';
      readonly file: string;
      readonly from: string;
      readonly to: string;
      readonly write: boolean;
    }
  | { readonly command: 'bookout'; readonly file: string; readonly write: boolean };

export type ReuseCommand = ReuseRequest['command'];

export const reuseShapes: Readonly<Record<ReuseCommand, Shape>> = {
  templates: { flags: ['--json'], values: [], word: 'word', least: 0, most: 0 },
  new: {
    flags: [],
    values: ['--template', '--out', '-o', '--title', '--units', '--currency', '--book', '--date'],
    many: ['--set'],
    word: 'word',
    least: 0,
    most: 0,
  },
  freeze: {
    flags: ['--release', '--write'],
    values: ['--date'],
    word: 'job file',
    least: 1,
    most: 1,
  },
  prices: { flags: ['--write'], values: ['--date'], word: 'shop book', least: 1, most: 2 },
  substitute: {
    flags: ['--write'],
    values: [],
    word: 'job file and two materials',
    least: 3,
    most: 3,
  },
  bookout: { flags: ['--write'], values: [], word: 'job file', least: 1, most: 1 },
};

export function isReuse(command: string): command is ReuseCommand {
  return Object.hasOwn(reuseShapes, command);
}

function newRequest({ values, many }: Words): Asking<ReuseRequest> {
  const template = values.get('--template') ?? '';
  if (template === '') {
    return {
      ok: false,
      fault: 'new needs --template and its name; panelwright templates lists them.',
    };
  }
  const out = values.get('--out') ?? values.get('-o') ?? '';
  if (!/\.paneljob$/.test(out)) {
    return {
      ok: false,
      fault: 'new needs -o and the job it is written to, such as door.paneljob.',
    };
  }
  const units = values.get('--units') ?? 'in';
  if (units !== 'in' && units !== 'mm') {
    return { ok: false, fault: `--units is in or mm, not ${units}.` };
  }
  const answers = many.get('--set') ?? [];
  const bare = answers.find((answer) => !/^[a-z][a-z0-9_]*=/.test(answer));
  if (bare !== undefined) {
    return { ok: false, fault: `--set takes name=answer, such as panel_length=24in, not ${bare}.` };
  }
  return {
    ok: true,
    request: {
      command: 'new',
      template,
      answers,
      out,
      title: values.get('--title'),
      units,
      currency: values.get('--currency') ?? 'USD',
      book: values.get('--book'),
      date: values.get('--date'),
    },
  };
}

const dayPattern = /^\d{4}-\d{2}-\d{2}$/;

function freezeRequest({ words, flags, values }: Words): Asking<ReuseRequest> {
  const [file = ''] = words;
  const [release, write] = [flags.has('--release'), flags.has('--write')];
  const date = values.get('--date');
  if (!release && (date === undefined || !dayPattern.test(date))) {
    return {
      ok: false,
      fault: 'freeze needs --date and the day of the prices, such as 2026-11-25.',
    };
  }
  return { ok: true, request: { command: 'freeze', file, date, release, write } };
}

/** What one of these commands is asked for. */
export function reuseRequest(command: ReuseCommand, found: Words): Asking<ReuseRequest> {
  const { words, flags, values } = found;
  const [file = '', from = '', to = ''] = words;
  const write = flags.has('--write');
  switch (command) {
    case 'templates':
      return { ok: true, request: { command, json: flags.has('--json') } };
    case 'new':
      return newRequest(found);
    case 'freeze':
      return freezeRequest(found);
    case 'prices': {
      const request = { book: file, list: words[1], date: values.get('--date'), write };
      return { ok: true, request: { command, ...request } };
    }
    case 'substitute':
      return { ok: true, request: { command, file, from, to, write } };
    case 'bookout':
      return { ok: true, request: { command, file, write } };
  }
}
