import type { FileReading } from '../../job/source.ts';
import type { Price } from '../../estimate/price/price.ts';
import type { MixGround } from '../../estimate/mix/mix-plan.ts';
import type { ScheduleGround } from '../../estimate/schedule/lay-schedule.ts';
import { escaped } from '../escaped.ts';
import { pageStyle } from './page-style.ts';
import { htmlText, tag, type Content, type Html } from './html.ts';

/** What papers are printed from: a snapshot has it all. */
export interface PaperGround extends MixGround, ScheduleGround {
  readonly shown: FileReading;
  readonly price: Price;
}

/** An alternative that the client may choose. */
export interface OfferedOption {
  readonly name: string;
  readonly note: string;
  /** Difference of the total, tax included, in minor units. */
  readonly change: number;
}

/** The commit that a file was last changed in. */
export interface FileCommit {
  readonly hash: string;
  /** True where it was changed since and not committed. */
  readonly changed: boolean;
}

/** What is known from outside of the job's own text. */
export interface PaperSource {
  /** Commit of the file, where git keeps it. */
  readonly commit?: FileCommit;
  /** Options that a quote offers, with what each adds to the total; below 0 for what it takes off. */
  readonly options?: readonly OfferedOption[];
}

/** A setting of the job as it stands in the file; empty where it has none. */
export function headText({ shown }: Pick<PaperGround, 'shown'>, key: string): string {
  return shown.head.get(key)?.text ?? '';
}

/** The job's title, or what stands for it. */
export function jobTitle(ground: Pick<PaperGround, 'shown'>): string {
  return headText(ground, 'title') || 'Untitled job';
}

function facts(pairs: readonly (readonly [label: string, value: string])[]): Html {
  const shown = pairs.filter(([, value]) => value !== '');
  return tag(
    'dl',
    { class: 'facts' },
    ...shown.map(([label, value]) => tag('div', {}, tag('dt', {}, label), tag('dd', {}, value))),
  );
}

/** A paper as such, before it is HTML or PDF. */
export interface PaperContent {
  readonly kind: string;
  readonly title: string;
  readonly main: Html;
}

function versionText({ commit }: PaperSource): string {
  if (commit === undefined) return '';
  return `${commit.hash.slice(0, 10)}${commit.changed ? ', changed since' : ''}`;
}

interface PaperParts {
  readonly ground: Pick<PaperGround, 'shown'>;
  readonly source: PaperSource;
  readonly facts: readonly (readonly [label: string, value: string])[];
}

/** A whole paper: what kind it is, the job's name and facts, and its content. */
export function paperContent(
  kind: string,
  { ground, source, facts: pairs }: PaperParts,
  ...content: readonly Content[]
): PaperContent {
  const title = jobTitle(ground);
  const head = tag(
    'header',
    {},
    tag('p', { class: 'kind' }, kind),
    tag('h1', {}, title),
    facts([...pairs, ['Version of the file', versionText(source)]]),
  );
  return { kind, title, main: tag('main', {}, head, '\n', ...content) };
}

/**
 * A paper as a page of HTML that prints on Letter and A4. A page shown inside the editor has a nonce, by
 * which its policy admits its own style and nothing else.
 */
export function htmlPage({ kind, title, main }: PaperContent, nonce?: string): string {
  const marked = nonce === undefined ? '' : ` nonce="${escaped(nonce)}"`;
  const policy =
    nonce === undefined
      ? ''
      : `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'nonce-${escaped(nonce)}'">\n`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
${policy}<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(`${kind}: ${title}`)}</title>
<style${marked}>${pageStyle}</style>
</head>
<body>
${htmlText(main)}
</body>
</html>
`;
}

/** Client, car and date: what stands on every paper. */
export function usualFacts(
  ground: Pick<PaperGround, 'shown'>,
): readonly (readonly [label: string, value: string])[] {
  return [
    ['Client', headText(ground, 'client')],
    ['Vehicle', headText(ground, 'vehicle')],
    ['Date', headText(ground, 'date')],
  ];
}
