import type { Book } from '../book/book.ts';
import type { HeavyAnswers, HeavyQuestion } from '../formula/catalogue.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { sameSettings } from '../units/same-settings.ts';
import type { Answers } from '../workbook/answers.ts';
import type { Bill } from './bill.ts';
import { assembleBill, openLines, type Lines } from './bill-lines.ts';
import { openMaterials, type Materials } from './materials.ts';
import { openOutcomes, type Outcomes, type WorkedRows } from './outcomes.ts';
import { changedRows, changedUnder, tablesOf, type BillTables } from './table-changes.ts';

/** A bill that is kept up with the answers: what did not change is not worked out again. */
export interface Estimate {
  /**
   * The bill for these answers. The same object comes back where nothing it depends on changed;
   * lines and rows that did not change keep their identity.
   */
  readonly update: (answers: Answers, book: Book, settings: UnitSettings) => Bill;
  /** Layouts that the bill waits for. */
  readonly wants: () => readonly HeavyQuestion[];
}

interface Stage {
  readonly book: Book;
  readonly settings: UnitSettings;
  readonly useStock: boolean;
  readonly materials: Materials;
  readonly outcomes: Outcomes;
  readonly lines: Lines;
  tables: BillTables;
  bill: Bill | undefined;
}

function freshStage(book: Book, settings: UnitSettings, useStock: boolean): Stage {
  return {
    book,
    settings,
    useStock,
    materials: openMaterials(settings, useStock),
    outcomes: openOutcomes(book, settings),
    lines: openLines(settings),
    tables: new Map(),
    bill: undefined,
  };
}

/** True for a job that takes what is on the shelf before anything is bought. */
function usesStock(answers: Answers): boolean {
  const result = answers.setting('use_stock');
  return result.state === 'value' && result.value.kind === 'yes-no' && result.value.yes;
}

/** What parts say beside their needs is not on the bill. */
function isBesideTheBill(keys: ReadonlySet<string>, { changes }: WorkedRows): boolean {
  if (changes?.length !== 0) return false;
  for (const key of keys) if (!key.startsWith('part/')) return false;
  return true;
}

/**
 * Opens an estimate. Its answer depends only on what `update` is given, never on what it was given
 * before: the memory is of rows that are the same objects as last time.
 */
export function openEstimate(heavy?: HeavyAnswers): Estimate {
  let stage: Stage | undefined;

  function stageFor(answers: Answers, book: Book, settings: UnitSettings): Stage {
    const useStock = usesStock(answers);
    const same = stage?.book === book && stage.useStock === useStock;
    return stage === undefined || !same || !sameSettings(stage.settings, settings)
      ? freshStage(book, settings, useStock)
      : stage;
  }

  return {
    wants: () => stage?.bill?.waits ?? [],
    update: (answers, book, settings) => {
      stage = stageFor(answers, book, settings);
      const { bill } = stage;
      const tables = tablesOf(answers);
      const { keys, moved } = changedRows(stage.tables, tables);
      const come = bill?.waits.some((one) => heavy?.answer(one) !== undefined) === true;
      if (bill !== undefined && !moved && !come) return bill;
      const facts = stage.materials.update(tables, keys);
      const looked = new Set([...changedUnder(stage.tables, tables, keys), ...facts.changed]);
      const worked = stage.outcomes.update(answers, facts.materials, looked);
      stage.tables = tables;
      if (bill !== undefined && !come && isBesideTheBill(keys, worked)) return bill;
      stage.bill = assembleBill(stage.lines, {
        answers,
        tables,
        facts: facts.materials,
        worked,
        heavy,
      });
      return stage.bill;
    },
  };
}

/** The bill of materials of a job, worked out from the ground. */
export function makeBill(answers: Answers, book: Book, settings: UnitSettings): Bill {
  return openEstimate().update(answers, book, settings);
}
