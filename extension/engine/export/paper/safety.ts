import { jobCautions } from '../../estimate/job-cautions.ts';
import { nameOf } from '../../estimate/cells.ts';
import { benchCautions, papersFirst } from './bench-cautions.ts';
import { list, section, tag, type Html } from './html.ts';
import {
  paperContent,
  type PaperContent,
  usualFacts,
  type PaperGround,
  type PaperSource,
} from './paper.ts';

function dangers(ground: PaperGround): readonly Html[] {
  return jobCautions(ground).map(({ hazard, rows }) => {
    const names = [...new Set(rows.map(nameOf))];
    const shown = names.slice(0, 4).join(', ');
    const more = names.length > 4 ? ` and ${String(names.length - 4)} more` : '';
    return tag(
      'section',
      { class: 'avoid' },
      tag('h3', {}, hazard.title),
      tag('p', {}, hazard.text),
      list(
        hazard.limits.map(({ text, source }) => [
          text,
          tag('span', { class: 'small' }, ` (${source})`),
        ]),
      ),
      tag('p', { class: 'small' }, `Brought by: ${shown}${more}.`),
    );
  });
}

/** The safety sheet: dangers of this job with the limits that rules print, and what to mind at the bench. */
export function safetyPaper(ground: PaperGround, source: PaperSource = {}): PaperContent {
  const found = dangers(ground);
  return paperContent(
    'Safety sheet',
    { ground, source, facts: usualFacts(ground) },
    tag('p', { class: 'warn' }, papersFirst),
    found.length === 0 ? tag('p', {}, 'No part of this job is known to bring a danger.') : [],
    section('Dangers of this job', found),
    section('At the bench', list(benchCautions(ground))),
  );
}
