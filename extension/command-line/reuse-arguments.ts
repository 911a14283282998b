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
    };

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

/** What one of these commands is asked for. */
export function reuseRequest(command: ReuseCommand, found: Words): Asking<ReuseRequest> {
  switch (command) {
    case 'templates':
      return { ok: true, request: { command, json: found.flags.has('--json') } };
    case 'new':
      return newRequest(found);
  }
}
