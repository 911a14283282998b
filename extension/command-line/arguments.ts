import { mergeRequest, type MergeRequest } from './merge-arguments.ts';
import type { Asking, Shape, Words } from './argument-shape.ts';
import {
  compareRequest,
  compareShapes,
  isCompare,
  type CompareCommand,
  type CompareRequest,
} from './compare-arguments.ts';
import { figuresRequest, figuresShapes, type FiguresRequest } from './figures-arguments.ts';
import {
  isReuse,
  reuseRequest,
  reuseShapes,
  type ReuseCommand,
  type ReuseRequest,
} from './reuse-arguments.ts';
import { isPaper, paperShapes, type PaperCommand } from './paper-arguments.ts';

/** What is asked for, or a sentence that says what is wrong with the call. */
export type Asked = Asking<Request>;

/** What a person asked for on the command line. */
export type Request =
  | CompareRequest
  | FiguresRequest
  | ReuseRequest
  | MergeRequest
  | {
      readonly command: 'paper';
      readonly paper: PaperCommand;
      readonly file: string;
      /** File it is written to; undefined for the standard output. */
      readonly out: string | undefined;
      /** Sheets of a PDF. */
      readonly sheet: string | undefined;
    }
  | { readonly command: 'help'; readonly of: CommandName | undefined }
  | { readonly command: 'version' }
  | { readonly command: 'estimate'; readonly file: string; readonly json: boolean }
  | { readonly command: 'check'; readonly files: readonly string[]; readonly json: boolean }
  | {
      readonly command: 'calc';
      readonly formula: string;
      readonly units: 'in' | 'mm';
      readonly currency: string;
      readonly json: boolean;
    }
  | { readonly command: 'bom'; readonly file: string; readonly csv: boolean }
  | { readonly command: 'costdrivers'; readonly file: string; readonly json: boolean }
  | { readonly command: 'functions'; readonly json: boolean }
  | {
      readonly command: 'patterns';
      readonly file: string;
      readonly out: string;
      /** Sheets of the printer; undefined for those usual where the job's units are. */
      readonly paper: 'letter' | 'a4' | undefined;
      /** Row to print alone; undefined for all. */
      readonly part: string | undefined;
    }
  | { readonly command: 'cutplan'; readonly file: string; readonly out: string | undefined }
  | { readonly command: 'layout'; readonly file: string; readonly json: boolean }
  | {
      readonly command: 'outline';
      /** List of points; undefined for what is piped in. */
      readonly file: string | undefined;
      readonly out: string;
      readonly units: 'in' | 'mm';
      readonly stations: boolean;
      readonly smooth: boolean;
    };

export type CommandName =
  | PaperCommand
  | CompareCommand
  | FiguresRequest['command']
  | ReuseCommand
  | 'estimate'
  | 'check'
  | 'calc'
  | 'bom'
  | 'costdrivers'
  | 'functions'
  | 'patterns'
  | 'outline'
  | 'cutplan'
  | 'layout'
  | 'merge';

const shapes: Readonly<Record<CommandName, Shape>> = {
  ...paperShapes,
  ...compareShapes,
  ...figuresShapes,
  ...reuseShapes,
  estimate: { flags: ['--json'], values: [], word: 'job file', least: 1, most: 1 },
  check: { flags: ['--json'], values: [], word: 'job file', least: 1, most: Infinity },
  calc: {
    flags: ['--json'],
    values: ['--units', '--currency'],
    word: 'formula',
    least: 1,
    most: 1,
  },
  bom: { flags: ['--csv'], values: [], word: 'job file', least: 1, most: 1 },
  costdrivers: { flags: ['--json'], values: [], word: 'job file', least: 1, most: 1 },
  functions: { flags: ['--json'], values: [], word: 'word', least: 0, most: 0 },
  patterns: {
    flags: [],
    values: ['--out', '--paper', '--part'],
    word: 'job file',
    least: 1,
    most: 1,
  },
  cutplan: { flags: [], values: ['--out'], word: 'job file', least: 1, most: 1 },
  layout: { flags: ['--json'], values: [], word: 'instance file', least: 1, most: 1 },
  merge: {
    flags: ['--set-up', '--yes', '--json'],
    values: ['-o', '--out', '--path', '--marker-size'],
    word: 'file',
    least: 0,
    most: 3,
  },
  outline: {
    flags: ['--stations', '--smooth'],
    values: ['--out', '--units'],
    word: 'list of points',
    least: 0,
    most: 1,
  },
};

function isCommand(word: string): word is CommandName {
  return Object.hasOwn(shapes, word);
}

type Sorted =
  { readonly ok: true; readonly sorted: Words } | { readonly ok: false; readonly fault: string };

// Everything after `--` is a word, so that a file or formula may begin with a dash. A formula such
// as -1in is a word anyway: no option begins with a digit or an equals sign.
function sorted(command: CommandName, args: readonly string[]): Sorted {
  const shape = shapes[command];
  const words: string[] = [];
  const flags = new Set<string>();
  const values = new Map<string, string>();
  const many = new Map<string, readonly string[]>();
  let optionsEnded = false;
  for (let index = 0; index < args.length; index++) {
    const arg = args[index] ?? '';
    const [name, inline] = splitOption(arg);
    if (optionsEnded || !/^-[-a-zA-Z]/.test(arg)) words.push(arg);
    else if (arg === '--') optionsEnded = true;
    else if (shape.flags.includes(arg)) flags.add(arg);
    else if ([...shape.values, ...(shape.many ?? [])].includes(name)) {
      const value = inline ?? args[++index];
      if (value === undefined) return { ok: false, fault: `${name} needs a value after it.` };
      values.set(name, value);
      many.set(name, [...(many.get(name) ?? []), value]);
    } else return { ok: false, fault: `${command} has no option ${name}.` };
  }
  return { ok: true, sorted: { words, flags, values, many } };
}

function splitOption(arg: string): readonly [string, string | undefined] {
  const at = arg.startsWith('--') ? arg.indexOf('=') : -1;
  return at < 0 ? [arg, undefined] : [arg.slice(0, at), arg.slice(at + 1)];
}

function wordFault(command: CommandName, words: readonly string[]): string | undefined {
  const { word, least, most } = shapes[command];
  if (words.length < least) return `${command} needs a ${word}.`;
  if (words.length <= most) return undefined;
  return most === 0
    ? `${command} takes no ${word} such as ${words[0] ?? ''}.`
    : `${command} takes one ${word}, not ${String(words.length)}; put quotes around it if it has spaces.`;
}

function unitsFault(units: string): Asked {
  return { ok: false, fault: `--units is in or mm, not ${units}.` };
}

function outlineRequest({ words, flags, values }: Words): Asked {
  const units = values.get('--units') ?? 'in';
  if (units !== 'in' && units !== 'mm') return unitsFault(units);
  const out = values.get('--out') ?? '';
  if (!/\.svg$/i.test(out)) {
    return { ok: false, fault: 'outline needs --out and the SVG file it is written to.' };
  }
  const [file] = words;
  const [stations, smooth] = [flags.has('--stations'), flags.has('--smooth')];
  return { ok: true, request: { command: 'outline', file, out, units, stations, smooth } };
}

function calcRequest({ words, flags, values }: Words): Asked {
  const units = values.get('--units') ?? 'in';
  if (units !== 'in' && units !== 'mm') return unitsFault(units);
  const currency = values.get('--currency') ?? 'USD';
  if (!/^[A-Z]{3}$/.test(currency)) {
    return { ok: false, fault: `--currency is a code such as USD, not ${currency}.` };
  }
  const formula = words[0] ?? '';
  const json = flags.has('--json');
  return { ok: true, request: { command: 'calc', formula, units, currency, json } };
}

function patternsRequest({ words, values }: Words): Asked {
  const out = values.get('--out');
  if (out === undefined || out === '') {
    return { ok: false, fault: 'patterns needs --out and the folder they are written to.' };
  }
  const paper = values.get('--paper');
  if (paper !== undefined && paper !== 'letter' && paper !== 'a4') {
    return { ok: false, fault: `--paper is letter or a4, not ${paper}.` };
  }
  const [file = ''] = words;
  const part = values.get('--part');
  return { ok: true, request: { command: 'patterns', file, out, paper, part } };
}

const printed = ['estimate', 'costdrivers', 'layout'] as const;

/** Commands that print one file, or what programs read of it. */
function isPrinted(command: CommandName): command is (typeof printed)[number] {
  return printed.some((one) => one === command);
}

/** Commands whose words take more than a line to read. */
const readers = {
  calc: calcRequest,
  patterns: patternsRequest,
  outline: outlineRequest,
  merge: mergeRequest,
} satisfies Partial<Record<CommandName, (found: Words) => Asked>>;

function hasReader(command: CommandName): command is keyof typeof readers {
  return Object.hasOwn(readers, command);
}

function requestOf(command: CommandName, found: Words): Asked {
  if (hasReader(command)) return readers[command](found);
  const { words, flags } = found;
  const file = words[0] ?? '';
  const json = flags.has('--json');
  if (isCompare(command)) return compareRequest(command, found);
  if (isReuse(command)) return reuseRequest(command, found);
  if (isPrinted(command)) return { ok: true, request: { command, file, json } };
  if (isPaper(command)) {
    const [out, sheet] = ['--out', '--paper'].map((one) => found.values.get(one));
    return { ok: true, request: { command: 'paper', paper: command, file, out, sheet } };
  }
  switch (command) {
    case 'check':
      return { ok: true, request: { command, files: words, json } };
    case 'bom':
      return { ok: true, request: { command, file, csv: flags.has('--csv') } };
    case 'functions':
      return { ok: true, request: { command, json } };
    case 'cutplan':
      return { ok: true, request: { command, file, out: found.values.get('--out') } };
    default:
      return figuresRequest(command, found);
  }
}

function isHelp(word: string | undefined): boolean {
  return word === '--help' || word === '-h' || word === 'help';
}

/** Reads the words after the program's name. */
export function readArguments(args: readonly string[]): Asked {
  const [first, ...rest] = args;
  if (first === undefined) return { ok: false, fault: 'Say what to do.' };
  if (isHelp(first)) {
    const of = rest.find(isCommand);
    return { ok: true, request: { command: 'help', of } };
  }
  if (first === '--version' || first === '-v') return { ok: true, request: { command: 'version' } };
  if (!isCommand(first)) return { ok: false, fault: `There is no command ${first}.` };
  if (rest.some((word) => word === '--help' || word === '-h')) {
    return { ok: true, request: { command: 'help', of: first } };
  }
  const found = sorted(first, rest);
  if (!found.ok) return found;
  const fault = wordFault(first, found.sorted.words);
  return fault === undefined ? requestOf(first, found.sorted) : { ok: false, fault };
}
