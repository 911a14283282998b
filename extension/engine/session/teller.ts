import { optionProblems } from '../estimate/options/options.ts';
import type { FileReading } from '../job/source.ts';
import { keptProblems, type Problem } from '../problems.ts';
import { whenAsked } from '../steps.ts';
import { askProblems } from '../template/check-asks.ts';
import { onDemand } from '../units/on-demand.ts';
import { openLocator } from './locate-problems.ts';
import type { LocatedProblem, Snapshot } from './snapshot.ts';
import { openWatch } from './watch.ts';

type Told = Pick<Snapshot, 'checks' | 'problems'>;

/** A job as it stands, without what a person has to look at in it. */
export type Standing = Omit<Snapshot, keyof Told>;

/** Tells what a person has to look at, behind the totals: an edit does not wait for it. */
export interface Teller {
  /** The job with its checks and problems, which are worked out when they are read first. */
  readonly told: (standing: Standing) => Snapshot;
  /** Works out what nobody has asked for; to be called before the job moves on. */
  readonly catchUp: () => void;
}

function sayTheSame(one: LocatedProblem, two: LocatedProblem): boolean {
  return (
    one.problem.message === two.problem.message && one.start === two.start && one.end === two.end
  );
}

/** Problems of questions and options, which hang on the text alone: kept until it moves. */
function openNamedCells(): (reading: FileReading) => readonly Problem[] {
  let last: { readonly reading: FileReading; readonly problems: readonly Problem[] } | undefined;
  return (reading) => {
    if (last?.reading !== reading)
      last = { reading, problems: [...askProblems(reading), ...optionProblems(reading)] };
    return last.problems;
  };
}

const checksOnDemand = onDemand('checks');
const problemsOnDemand = onDemand('problems');

/** Opens a teller that has told nothing yet. */
export function openTeller(): Teller {
  const watch = openWatch();
  const locate = openLocator();
  const namedCells = openNamedCells();
  let problems: readonly LocatedProblem[] | undefined;
  let untold: (() => Told) | undefined;

  function catchUp(): void {
    untold?.();
    untold = undefined;
  }

  function toldOf(standing: Standing): Told {
    const { reading, shown, book, workbook, bill, work, price, settings } = standing;
    const watched = watch.update(workbook, book, settings);
    const worked = [book, workbook, bill, work, price, watched].flatMap((one) => one.problems);
    const own = reading === shown ? [...worked, ...namedCells(shown)] : [];
    const found = locate(reading, [...reading.problems, ...own]);
    problems = keptProblems(problems, found, sayTheSame);
    return { checks: watched.checks, problems };
  }

  return {
    catchUp,
    told: (standing) => {
      catchUp();
      const told = whenAsked(() => toldOf(standing));
      untold = told;
      return problemsOnDemand(
        checksOnDemand({ ...standing }, () => told().checks),
        () => told().problems,
      );
    },
  };
}
