import {
  kitProblems,
  kitRows,
  kitStart,
  type KitQuestion,
  type Snapshot,
} from '../engine/index.ts';
import type { RowAddress } from '../protocol/messages.ts';
import type { KitPreview, KitQuestionView, KitView } from '../protocol/kit-view.ts';
import type { ChoiceOption } from '../protocol/views.ts';
import { takenIds } from './gestures.ts';

function rowsOfKinds(of: readonly string[], snapshot: Snapshot): readonly ChoiceOption[] {
  const tables = ['panel', 'driver', 'measure', 'part'];
  return tables
    .flatMap((table) => snapshot.workbook.rows(table))
    .filter((row) => of.includes(row.table) || of.includes(row.kind))
    .map((row) => ({ value: row.id, label: row.cell('name').text ?? row.id, detail: row.id }));
}

function materials(of: readonly string[], snapshot: Snapshot): readonly ChoiceOption[] {
  return snapshot.workbook
    .rows('material')
    .filter(
      (row) => of.length === 0 || of.includes(row.cell('form').text ?? '') || of.includes(row.id),
    )
    .map((row) => ({
      value: row.id,
      label: row.cell('name').text ?? row.id,
      detail: row.cell('form').text ?? '',
    }));
}

function optionsOf(question: KitQuestion, snapshot: Snapshot): readonly ChoiceOption[] {
  switch (question.type) {
    case 'choice':
      return question.of.map((value) => ({ value, label: value.replaceAll('_', ' '), detail: '' }));
    case 'row':
      return rowsOfKinds(question.of, snapshot);
    case 'material':
      return materials(question.of, snapshot);
    case 'yes-no':
      return ['yes', 'no'].map((value) => ({ value, label: value, detail: '' }));
    default:
      return [];
  }
}

/** Rows are asked for with the fitting one offered: that under the cursor, else the last. */
function startOf(
  question: KitQuestion,
  options: readonly ChoiceOption[],
  at: { readonly row: RowAddress | undefined; readonly settings: Snapshot['settings'] },
): string {
  if (question.type !== 'row' || question.start !== '') return kitStart(question, at.settings);
  const under = options.find((option) => option.value === at.row?.id);
  return (under ?? options.at(-1))?.value ?? '';
}

/** A kit's questions with the answers offered. */
export function kitView(id: string, row: RowAddress | undefined, snapshot: Snapshot): KitView {
  const kit = snapshot.book.kits.find((one) => one.id === id);
  if (kit === undefined) return { id, name: id, help: 'There is no such kit.', questions: [] };
  const questions: KitQuestionView[] = kit.questions.map((question) => {
    const options = optionsOf(question, snapshot);
    const picks = ['choice', 'row', 'material'].includes(question.type);
    return {
      key: question.key,
      label: question.label,
      help: question.help,
      type: question.type === 'yes-no' ? 'yes-no' : picks ? 'choice' : 'text',
      options,
      start: startOf(question, options, { row, settings: snapshot.settings }),
      required: question.required,
    };
  });
  return { id: kit.id, name: kit.name, help: kit.help, questions };
}

/** The rows a kit would write, or what is wrong with the answers. */
export function kitPreview(
  id: string,
  answers: Readonly<Record<string, string>>,
  snapshot: Snapshot,
): KitPreview {
  const kit = snapshot.book.kits.find((one) => one.id === id);
  if (kit === undefined) return { rows: [], totals: [], problems: {} };
  const problems = Object.fromEntries(
    kitProblems(kit, answers, snapshot.settings).map(({ key, message }) => [key, message]),
  );
  const rows = kitRows(kit, answers, { taken: takenIds(snapshot), settings: snapshot.settings });
  if (!rows.ok) return { rows: [], totals: [], problems };
  return {
    rows: rows.value.map((row) => ({
      table: row.table,
      id: row.id,
      words: row.cells['name'] ?? row.cells['kind'] ?? '',
    })),
    totals: [],
    problems,
  };
}
