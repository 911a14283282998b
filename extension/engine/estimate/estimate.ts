import type { Book } from '../book/book.ts';
import type { HeavyAnswers, HeavyQuestion } from '../formula/catalogue.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { sameSettings } from '../units/same-settings.ts';
import type { Answers } from '../workbook/answers.ts';
import type { Bill } from './bill.ts';
import { assembleBill, openLines, type Lines } from './bill-lines.ts';
import { openMaterials, type Materials } from './materials.ts';
import { openOutcomes, type Outcomes } from './outcomes.ts';
import { changedRows, tablesOf, type BillTables } from './table-changes.ts';

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

/**
 * Opens an estimate. Its answer depends only on what `update` is given, never on what it was given
 * before: the memory is of rows that are the same objects as last time.
 */
export function openEstimate(heavy?: HeavyAnswers): Estimate {
  let stage: Stage | undefined;
  return {
    wants: () => stage?.bill?.waits ?? [],
    update: (answers, book, settings) => {
      const useStock = usesStock(answers);
      const same = stage?.book === book && stage.useStock === useStock;
      if (stage === undefined || !same || !sameSettings(stage.settings, settings)) {
        stage = freshStage(book, settings, useStock);
      }
      const tables = tablesOf(answers);
      const { keys, moved } = changedRows(stage.tables, tables);
      const come = stage.bill?.waits.some((one) => heavy?.answer(one) !== undefined) === true;
      if (stage.bill !== undefined && !moved && !come) return stage.bill;
      const facts = stage.materials.update(tables, keys);
      const outcomes = stage.outcomes.update(
        answers,
        facts.materials,
        new Set([...keys, ...facts.changed]),
      );
      stage.tables = tables;
      stage.bill = assembleBill(stage.lines, {
        answers,
        tables,
        facts: facts.materials,
        outcomes,
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
