import { shapeOutline } from '../../geometry/shape-outline.ts';
import type { Problem } from '../../problems.ts';
import { bearsWords, unplacedWords, unsettledWords, wallWords } from '../../skin/contact.ts';
import { faultsOfRing } from '../../skin/panel-problems.ts';
import { isPlaced, isRing, ringOf } from '../../skin/read-panel.ts';
import { faultProblem } from '../../skin/skin-problems.ts';
import { length, plain } from '../../units/dimension.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { loneView } from '../../workbook/row-view.ts';
import { baseIn, nameOf, placeOf, shapeIn } from '../cells.ts';
import { percentText } from '../../units/percent-text.ts';
import { linked } from './trap-cells.ts';
import { trapProblem } from './trap-problems.ts';
import type { Trap, TrapView } from './trap.ts';

/** A ring whose place on its base cannot be: told at the ring. */
function misplaced(row: AnsweredRow, view: TrapView): readonly Problem[] {
  const ringRow = loneView(row);
  if (!isRing(ringRow) || !isPlaced(ringRow)) return [];
  const base = linked(row, 'on', { table: 'part', view });
  const shape = base && shapeIn(base, 'shape');
  const ring = ringOf(ringRow);
  if (base === undefined || shape === undefined || ring === undefined) return [];
  const thickness = baseIn(base, 'thickness', length) ?? 0;
  const named = { ...ring, id: nameOf(row) };
  return faultsOfRing({ outline: shapeOutline(shape, 0.2), thickness }, named).map((fault) => {
    const column = fault.code === 'skin-tilt-steep' ? 'tilt' : 'at_x';
    return { ...faultProblem(fault, view.settings), place: placeOf(row, column) };
  });
}

function contactWords(row: AnsweredRow): readonly string[] {
  const { result } = row.cell('contact');
  if (result.state !== 'value' || result.value.kind !== 'text') return [];
  return result.value.text === '' ? [] : result.value.text.split('; ');
}

function notedContact(words: string, row: AnsweredRow, view: TrapView): Problem {
  const place = placeOf(row, 'contact');
  const more = { severity: 'note', place } as const;
  if (words.startsWith(unsettledWords))
    return trapProblem('skin-not-settled', { row: nameOf(row) }, { severity: 'warning', place });
  const code = words.startsWith(wallWords) ? 'skin-hugs-wall' : 'skin-bears-on-wall';
  const rest = words.slice((code === 'skin-hugs-wall' ? wallWords : bearsWords).length);
  const [id = '', along = ''] = rest.split(' along ');
  const found = view.row('part', id);
  const where = found === undefined ? place : placeOf(found, 'depth');
  const name = found === undefined ? id : nameOf(found);
  return trapProblem(code, { row: nameOf(row), ring: name, along }, { ...more, place: where });
}

/** What the stretched cloth does that a person would want to know before stretching it. */
function contact(row: AnsweredRow, view: TrapView): readonly Problem[] {
  if (row.kind !== 'skin') return [];
  // Where rings have no place yet the cell itself says so; that is no fault of the job.
  return contactWords(row)
    .filter((words) => !words.startsWith(unplacedWords))
    .map((words) => notedContact(words, row, view));
}

/** Cloth or covering that cannot be pulled as far as the shape asks. */
function overStretched(row: AnsweredRow, view: TrapView): readonly Problem[] {
  if (row.kind !== 'skin' && row.kind !== 'vinyl') return [];
  const skin = row.kind === 'skin' ? row : linked(row, 'on', { table: 'part', view });
  const material = linked(row, 'material', { table: 'material', view });
  if (skin?.kind !== 'skin' || material === undefined) return [];
  const [needed, gives] = [baseIn(skin, 'stretch', plain), baseIn(material, 'stretch', plain)];
  if (needed === undefined || gives === undefined || needed <= gives) return [];
  const details = {
    row: nameOf(row),
    material: nameOf(material),
    needed: percentText(needed),
    gives: percentText(gives),
  };
  const code = row.kind === 'skin' ? 'skin-over-stretch' : 'skin-needs-dart';
  // What a material gives is a figure that shops have yet to measure: no more than a note.
  return [trapProblem(code, details, { severity: 'note', place: placeOf(row, 'material') })];
}

/** Traps of the stretched skin. */
export const skinTraps: readonly Trap[] = [
  { tables: ['part'], find: misplaced },
  { tables: ['part'], find: contact },
  { tables: ['part'], find: overStretched },
];
