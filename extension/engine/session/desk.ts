import type { Book } from '../book/book.ts';
import { readBook } from '../book/read-book.ts';
import type { Check } from '../estimate/checks/check.ts';
import { openChecks } from '../estimate/checks/checks.ts';
import { makeCatalogue } from '../formula/make-catalogue.ts';
import { standardFunctions } from '../formula/standard/standard-functions.ts';
import { fileForm } from '../job/file-form.ts';
import { settingsOf } from '../job/settings.ts';
import type { FileReading } from '../job/source.ts';
import { skinFunctions } from '../skin/skin-functions.ts';
import { atOnce, type Steps } from '../steps.ts';
import { tradeFunctions } from '../trade/trade-functions.ts';
import type { Brought } from '../workbook/charts.ts';
import { workbookSteps, type Workbook } from '../workbook/workbook.ts';
import { openMoney, type Money } from './money-stages.ts';
import { openNeedsIndex } from './needs-index.ts';
import type { Wants } from './wants.ts';
import type { Snapshot } from './snapshot.ts';
import { openTeller } from './teller.ts';

/** Every function of the formula language. */
export const catalogue = makeCatalogue([...standardFunctions, ...tradeFunctions, ...skinFunctions]);

/** What a job would come to. */
export interface WhatIf extends Money {
  readonly checks: readonly Check[];
}

/** The stages of one job behind each other: book, workbook, bill, work, price. */
export interface Desk {
  readonly update: (
    shown: FileReading,
    bookMoved: boolean,
  ) => { readonly rows: ReadonlySet<string>; readonly structure: boolean };
  /** Works on with answers that have come to heavy questions. */
  readonly settle: () => { readonly rows: ReadonlySet<string>; readonly structure: boolean };
  readonly snapshot: (reading: FileReading) => Snapshot;
  readonly whatIf: (shown: FileReading) => WhatIf;
}

/** What a job stands on besides its own text. */
export interface DeskGrounds {
  readonly bookFile: FileReading | undefined;
  readonly brought: Brought;
  /** Tells which outline files a reading asks for. */
  readonly wants: Wants;
}

/** Problems of a book that its own cells tell, where it is open itself. */
const toldByCells: readonly string[] = ['book-file-faulty', 'pack-material-unknown'];

/** A shop book that is open itself: as the jobs that use it see it. */
function openBook(reading: FileReading): Book {
  const book = readBook({ file: reading, job: new Map() });
  return { ...book, problems: book.problems.filter(({ code }) => !toldByCells.includes(code)) };
}

/** The book of a job: its own rows over those of its shop book. */
function bookOfJob(reading: FileReading, bookFile: FileReading | undefined): Book {
  if (fileForm(reading) === 'book') return openBook(reading);
  return readBook({
    job: reading.tables,
    currency: settingsOf(reading.head).currency,
    ...(bookFile === undefined ? {} : { file: bookFile }),
  });
}

export function openDesk(first: FileReading, grounds: DeskGrounds): Desk {
  return atOnce(deskSteps(first, grounds));
}

/** The same in steps, for a long job. */
export function* deskSteps(first: FileReading, grounds: DeskGrounds): Steps<Desk> {
  const { bookFile, brought, wants } = grounds;
  const bookOf = (reading: FileReading): Book => bookOfJob(reading, bookFile);
  let shown = first;
  let book = bookOf(first);
  const workbook: Workbook = yield* workbookSteps(first, book, catalogue, brought);
  const stages = openMoney(brought.heavy);
  let money = stages.update(workbook, book, settingsOf(first.head));
  yield;
  const teller = openTeller();
  const tried = openChecks();
  const index = openNeedsIndex();
  index.update(money.bill);

  /** Brings the money after a change of the workbook, which it hands on. */
  function billed<Change>(change: Change): Change {
    const { bill } = money;
    money = stages.update(workbook, book, settingsOf(shown.head));
    if (money.bill !== bill) index.update(money.bill);
    return change;
  }

  return {
    update: (reading, bookMoved) => {
      teller.catchUp();
      shown = reading;
      if (bookMoved) book = bookOf(reading);
      return billed(workbook.update(reading, book));
    },
    settle: () => {
      teller.catchUp();
      return billed(workbook.settle());
    },
    snapshot: (reading) =>
      teller.told({
        ...{ reading, shown, book, workbook, ...money },
        settings: settingsOf(shown.head),
        needs: index.needs,
        replied: (question) => brought.heavy?.answer(question),
        wants: wants.update(shown),
        heavy: [...workbook.wants(), ...stages.wants()],
      }),
    whatIf: (reading) => {
      teller.catchUp();
      workbook.update(reading, book);
      const settings = settingsOf(reading.head);
      const then = {
        ...stages.update(workbook, book, settings),
        checks: tried.update(workbook, book, settings).all,
      };
      workbook.update(shown, book);
      stages.update(workbook, book, settingsOf(shown.head));
      return then;
    },
  };
}
