import { columnOf, namedRowTables } from '../job/columns.ts';
import { takeId } from '../job/fresh-id.ts';
import { failed, ok, type Result } from '../result.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { Kit, KitRow } from './book.ts';
import { filled, filledAnswers, settledAnswer, type KitAnswers } from './kit-answers.ts';
import { keysIn } from './read-kits.ts';

/** A row as a kit writes it: what an insert-row edit takes. */
export interface WrittenRow {
  readonly table: string;
  readonly id: string;
  readonly cells: Readonly<Record<string, string>>;
}

export interface KitContext {
  /** Ids that rows of the job have already. */
  readonly taken: ReadonlySet<string>;
  /** The job's units and currency: bare numbers are completed with them. */
  readonly settings?: UnitSettings;
}

type Answers = ReadonlyMap<string, string>;

function settledAnswers(kit: Kit, answers: KitAnswers, settings?: UnitSettings): Result<Answers> {
  const texts = filledAnswers(kit, answers, settings);
  const settled = new Map<string, string>();
  for (const question of kit.questions) {
    const answer = settledAnswer(question, texts.get(question.key) ?? '', settings);
    if (!answer.ok) return answer;
    settled.set(question.key, answer.value);
  }
  return ok(settled);
}

function isWanted(row: KitRow, answers: Answers): boolean {
  if (row.when === undefined) return true;
  const answer = answers.get(row.when) ?? '';
  return answer !== '' && answer !== 'no' && !/^0(?:\.0*)?(?:\s|$)/.test(answer);
}

/** The id each row gets, by the template of its id. */
function idsOf(
  rows: readonly KitRow[],
  answers: Answers,
  taken: ReadonlySet<string>,
): ReadonlyMap<string, string> {
  const used = new Set(taken);
  const ids = new Map<string, string>();
  for (const { id: template } of rows) {
    const id = takeId(filled(template, answers), used);
    ids.set(template, id);
  }
  return ids;
}

function refersToRows(table: string, column: string): boolean {
  const type = columnOf(table, column)?.type;
  return type?.kind === 'link' && type.tables.some((to) => namedRowTables.includes(to));
}

// Templates of ids are matched as wholes: `{id}` is not the beginning of `{id}_ring`.
function withIds(template: string, ids: ReadonlyMap<string, string>): string {
  const literal = [...ids.keys()]
    .sort((a, b) => b.length - a.length)
    .map((id) => id.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  if (literal.length === 0) return template;
  const pattern = new RegExp(`(?<![a-z0-9_}])(?:${literal.join('|')})(?![a-z0-9_{])`, 'g');
  return template.replace(pattern, (found) => ids.get(found) ?? found);
}

// A space before a unit would end the number of a formula: `5/8 in` stands there as `5/8in`.
function tightAnswers(answers: Answers): Answers {
  return new Map(
    [...answers].map(([key, text]) => [key, text.replace(/(?<=\d) (?=[A-Za-z%]+$)/, '')]),
  );
}

function cellText(
  template: string,
  at: { readonly table: string; readonly column: string },
  known: { readonly answers: Answers; readonly ids: ReadonlyMap<string, string> },
): string {
  const { answers, ids } = known;
  const formula = template.startsWith('=');
  const refers = formula || refersToRows(at.table, at.column);
  const own = refers ? withIds(template, ids) : template;
  if (!formula) return filled(own, answers).trim();
  if (keysIn(own).some((key) => answers.get(key) === '')) return '';
  return filled(own, tightAnswers(answers)).trim();
}

/**
 * The rows a kit writes for these answers, in order, with ids that no row has yet: a taken id gets a
 * number, and whatever in the kit refers to the row follows it. A cell left blank takes its kind's
 * default, so a kit writes decisions only.
 *
 * @returns the rows, or the first thing wrong with the answers (`kitProblems` has all of them)
 */
export function kitRows(
  kit: Kit,
  answers: KitAnswers,
  context: KitContext,
): Result<readonly WrittenRow[]> {
  const settled = settledAnswers(kit, answers, context.settings);
  if (!settled.ok) return failed(settled.problem);
  const rows = kit.rows.filter((row) => isWanted(row, settled.value));
  const ids = idsOf(rows, settled.value, context.taken);
  const known = { answers: settled.value, ids };
  return ok(
    rows.map(({ table, id, cells }) => ({
      table,
      id: ids.get(id) ?? id,
      cells: Object.fromEntries(
        [...cells]
          .map(
            ([column, template]) => [column, cellText(template, { table, column }, known)] as const,
          )
          .filter(([, text]) => text !== ''),
      ),
    })),
  );
}
