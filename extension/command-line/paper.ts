import {
  compareOptions,
  htmlPage,
  lackingSentence,
  optionPrices,
  optionsOf,
  paperPdf,
  papers,
  type PaperContent,
  type PaperSource,
} from '../engine/index.ts';
import type { Request } from './arguments.ts';
import { outFile, refused, unreadable } from './endings.ts';
import { problemLines } from './estimate-report.ts';
import { ending, readJob, type ReadJob } from './job.ts';
import { commitOf } from './revisions.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';

/** How a paper is to be written. */
interface PaperForm {
  /** File it is written to; undefined for the standard output. */
  readonly out: string | undefined;
  /** Sheets of a PDF; undefined for those usual where the job's units are. */
  readonly sheet: string | undefined;
}

/** A paper as it is written, with what has to be said of it. */
interface MadePaper {
  readonly content: string | Uint8Array;
  readonly note: string;
}

/** The paper as PDF where the file's name ends so, else as a page of HTML; or a sentence why not. */
function madePaper(
  paper: PaperContent,
  { out = '', sheet }: PaperForm,
  { snapshot }: ReadJob,
): MadePaper | string {
  if (!out.toLowerCase().endsWith('.pdf')) {
    if (sheet === undefined) return { content: htmlPage(paper), note: '' };
    return '--paper is for a PDF: give --out a name that ends in .pdf.';
  }
  const usual = snapshot.settings.units === 'in' ? 'letter' : 'a4';
  const size = sheet ?? usual;
  if (size !== 'letter' && size !== 'a4') return `--paper is letter or a4, not ${size}.`;
  const { bytes, lacking } = paperPdf(paper, size);
  const said = lackingSentence(lacking);
  return { content: bytes, note: said === '' ? '' : `panelwright: ${said}\n` };
}

/**
 * Writes a paper to where it was asked for. The paper alone goes to the output: problems of its job go
 * to the other stream.
 */
export function outPaper(
  paper: PaperContent,
  { form, job }: { readonly form: PaperForm; readonly job: ReadJob },
  world: World,
): ExitCode {
  const made = madePaper(paper, form, job);
  if (typeof made === 'string') return refused(made, world);
  const { content, note } = made;
  world.err(`${problemLines(job.file, job.problems)}${note}`);
  if (form.out !== undefined) return outFile(form.out, content, world);
  if (typeof content === 'string') world.out(content);
  return exitCodes.fine;
}

/** What a paper tells of its job's file: the commit, where git keeps it. */
export function sourceOf({ file }: ReadJob, world: World): PaperSource {
  const commit = commitOf(file, world);
  return commit === undefined ? {} : { commit };
}

/** Options of the job, which a quote offers. */
function offersOf(job: ReadJob): Pick<PaperSource, 'options'> {
  const has = optionsOf(job.snapshot.shown).length > 0;
  return has ? { options: optionPrices(compareOptions(job.again())) } : {};
}

/** Writes a paper of a job. */
export function paper(request: Extract<Request, { command: 'paper' }>, world: World): ExitCode {
  const job = readJob(request.file, world);
  if (job === undefined) return refused(unreadable(request.file), world);
  const found = papers.find(({ id }) => id === request.paper);
  if (found === undefined) return refused(`There is no paper ${request.paper}.`, world);
  const offers = request.paper === 'quote' ? offersOf(job) : {};
  const content = found.content(job.snapshot, { ...sourceOf(job, world), ...offers });
  const written = outPaper(content, { form: request, job }, world);
  return written === exitCodes.fine ? ending(job.problems) : written;
}
