import { readFile } from '../job/read-file.ts';
import type { FileReading } from '../job/source.ts';
import type { Ask } from './ask.ts';
import { builtInTemplates } from './built-in.ts';
import { asksOf } from './read-asks.ts';
import { templateWord } from './save-template.ts';

/** A template ready to be chosen. */
export interface Template {
  /** Word that jobs made from it remember. */
  readonly word: string;
  readonly name: string;
  readonly help: string;
  readonly version: number;
  readonly asks: readonly Ask[];
  readonly text: string;
  readonly reading: FileReading;
}

/** Reads a template’s text; any text can be read. */
export function readTemplate(text: string): Template {
  const reading = readFile(text);
  const setting = (key: string): string => reading.head.get(key)?.text ?? '';
  const name = setting('title') === '' ? 'Untitled template' : setting('title');
  const version = Number(setting('template_version'));
  return {
    word: setting('template') === '' ? templateWord(name) : setting('template'),
    name,
    help: setting('note'),
    version: Number.isFinite(version) ? version : 0,
    asks: asksOf(reading),
    text,
    reading,
  };
}

let known: readonly Template[] | undefined;

/** The templates that come with the program, read once: their texts never change while it runs. */
export function ownTemplates(): readonly Template[] {
  known ??= builtInTemplates.map(readTemplate);
  return known;
}
