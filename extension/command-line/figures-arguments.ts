import type { Asking, Shape, Words } from './argument-shape.ts';

/** What options, actuals and workbooks are asked for on the command line. */
export type FiguresRequest =
  | {
      readonly command: 'options';
      readonly file: string;
      readonly json: boolean;
      /** Option that becomes the job; undefined to compare all. */
      readonly accept: string | undefined;
      readonly write: boolean;
    }
  | { readonly command: 'actuals'; readonly files: readonly string[]; readonly json: boolean }
  | {
      readonly command: 'rates';
      readonly book: string;
      readonly files: readonly string[];
      readonly write: boolean;
    }
  | { readonly command: 'xlsx'; readonly file: string; readonly out: string };

export type FiguresCommand = FiguresRequest['command'];

export const figuresShapes: Readonly<Record<FiguresCommand, Shape>> = {
  options: {
    flags: ['--json', '--write'],
    values: ['--accept'],
    word: 'job file',
    least: 1,
    most: 1,
  },
  actuals: { flags: ['--json'], values: [], word: 'job file', least: 1, most: Infinity },
  rates: { flags: ['--write'], values: [], word: 'shop book and jobs', least: 2, most: Infinity },
  xlsx: { flags: [], values: ['--out', '-o'], word: 'job file', least: 1, most: 1 },
};

/** What one of these commands is asked for. */
export function figuresRequest(command: FiguresCommand, found: Words): Asking<FiguresRequest> {
  const { words, flags, values } = found;
  const [file = '', ...files] = words;
  const [json, write] = [flags.has('--json'), flags.has('--write')];
  switch (command) {
    case 'options':
      return {
        ok: true,
        request: { command, file, json, accept: values.get('--accept'), write },
      };
    case 'actuals':
      return { ok: true, request: { command, files: words, json } };
    case 'rates':
      return { ok: true, request: { command, book: file, files, write } };
    case 'xlsx': {
      const out = values.get('--out') ?? values.get('-o') ?? '';
      if (!/\.xlsx$/i.test(out)) {
        return { ok: false, fault: 'xlsx needs --out and the workbook it is written to (*.xlsx).' };
      }
      return { ok: true, request: { command, file, out } };
    }
  }
}
