import type { FileReading } from '../../job/source.ts';
import type { Price } from '../../estimate/price/price.ts';
import type { MixGround } from '../../estimate/mix/mix-plan.ts';
import type { ScheduleGround } from '../../estimate/schedule/lay-schedule.ts';
import { pageStyle } from './page-style.ts';
import { escaped, made, tag, type Content, type Html } from './html.ts';

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

/** What is known from outside of the job's own text. */
export interface PaperSource {
  /** Commit of the file, where the host knows it. */
  readonly commit?: string;
  /** Options that a quote offers, with what each adds to the total; below 0 for what it takes off. */
  readonly options?: readonly OfferedOption[];
  /** Lets a page's policy admit the style; only for pages shown inside the editor. */
  readonly nonce?: string;
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

/** A whole page: what kind of paper it is, the job's name and facts, and its content. */
export function paperPage(
  kind: string,
  of: {
    readonly ground: Pick<PaperGround, 'shown'>;
    readonly source: PaperSource;
    readonly facts: readonly (readonly [label: string, value: string])[];
  },
  ...content: readonly Content[]
): string {
  const { ground, source } = of;
  const title = jobTitle(ground);
  const commit = source.commit === undefined ? '' : source.commit.slice(0, 10);
  const head = tag(
    'header',
    {},
    tag('p', { class: 'kind' }, kind),
    tag('h1', {}, title),
    facts([...of.facts, ['Version of the file', commit]]),
  );
  const nonce = source.nonce === undefined ? '' : ` nonce="${escaped(source.nonce)}"`;
  const policy =
    source.nonce === undefined
      ? ''
      : `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'nonce-${escaped(source.nonce)}'">\n`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
${policy}<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(`${kind}: ${title}`)}</title>
<style${nonce}>${pageStyle}</style>
</head>
<body>
${tag('main', {}, head, made('\n'), ...content).html}
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
