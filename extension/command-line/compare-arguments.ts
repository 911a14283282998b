import type { Asking, Shape, Words } from './argument-shape.ts';

/** What comparing, history and change orders are asked for on the command line. */
export type CompareRequest =
  | {
      readonly command: 'diff';
      /** Files, or `REV:FILE` of a git repository. */
      readonly before: string;
      readonly after: string;
      readonly json: boolean;
    }
  | {
      readonly command: 'history';
      readonly file: string;
      /** `ROW.COLUMN`, or `job.SETTING`. */
      readonly cell: string;
      /** Commits that are looked through. */
      readonly most: number;
      readonly json: boolean;
    }
  | {
      readonly command: 'changeorder';
      readonly file: string;
      /** Revision, `REV:FILE` or file that the order changes. */
      readonly since: string;
      readonly copy: 'client' | 'shop';
      readonly out: string | undefined;
      /** Sheets of a PDF. */
      readonly sheet: string | undefined;
    };

export type CompareCommand = CompareRequest['command'];

export const compareShapes: Readonly<Record<CompareCommand, Shape>> = {
  diff: { flags: ['--json'], values: [], word: 'file', least: 2, most: 2 },
  history: {
    flags: ['--json'],
    values: ['--most'],
    word: 'job file and a cell',
    least: 2,
    most: 2,
  },
  changeorder: {
    flags: ['--shop'],
    values: ['--since', '--out', '--paper'],
    word: 'job file',
    least: 1,
    most: 1,
  },
};

export function isCompare(command: string): command is CompareCommand {
  return Object.hasOwn(compareShapes, command);
}

/** Commits looked through where nobody says how many. */
const usualMost = 200;

function historyRequest({ words, flags, values }: Words): Asking<CompareRequest> {
  const [file = '', cell = ''] = words;
  const said = values.get('--most') ?? String(usualMost);
  const most = Number(said);
  if (!Number.isInteger(most) || most < 1) {
    return { ok: false, fault: `--most is a whole number of commits, not ${said}.` };
  }
  return {
    ok: true,
    request: { command: 'history', file, cell, most, json: flags.has('--json') },
  };
}

/** What one of these commands is asked for. */
export function compareRequest(command: CompareCommand, found: Words): Asking<CompareRequest> {
  const { words, flags, values } = found;
  const [file = '', after = ''] = words;
  switch (command) {
    case 'diff':
      return { ok: true, request: { command, before: file, after, json: flags.has('--json') } };
    case 'history':
      return historyRequest(found);
    case 'changeorder': {
      const since = values.get('--since') ?? '';
      if (since === '') {
        return {
          ok: false,
          fault: 'changeorder needs --since and the revision or file that was agreed to.',
        };
      }
      const copy = flags.has('--shop') ? 'shop' : 'client';
      const [out, sheet] = ['--out', '--paper'].map((one) => values.get(one));
      return { ok: true, request: { command, file, since, copy, out, sheet } };
    }
  }
}
