import { canHold, placementOwners, type Edit, type Snapshot } from '../engine/index.ts';
import type { GridEdit } from '../protocol/messages.ts';

type LockEdit = Extract<GridEdit, { kind: 'lock' }>;

/** A thousandth of a millimetre is finer than any saw; what is written can be read. */
function written(mm: number): string {
  return `${String(Math.round(mm * 1000) / 1000)} mm`;
}

/**
 * Edits that lock the pieces of a row where they lie on a sheet, or unlock them where they are locked;
 * or the sentence why they cannot be.
 */
export function lockEdits(
  { line, sheet, row }: LockEdit,
  { bill, shown }: Snapshot,
  newId: (word: string) => string,
): readonly Edit[] | string {
  const laid = bill.lines.find(({ id }) => id === line)?.laid;
  if (laid === undefined || !canHold(laid.order.instance)) {
    return 'Only parts cut from sheets, and rectangles cut off a roll, are locked in place.';
  }
  const own = [...placementOwners(laid)].flatMap(([placement, owner]) => {
    const is = owner.table === row.table && owner.row === row.id;
    return is && placement.index === sheet ? [placement] : [];
  });
  if (own.length === 0) return `No piece of ${row.id} lies on sheet ${String(sheet + 1)}.`;
  const locks = own.flatMap(({ fixed }) => (fixed === undefined ? [] : [fixed]));
  if (locks.length > 0) {
    const rows = shown.tables.get('lock') ?? [];
    return rows
      .filter(({ id }) => locks.includes(id))
      .map(({ id, occurrence }) => ({
        kind: 'delete-row',
        row: { table: 'lock', id, occurrence },
      }));
  }
  return own.map((one): Edit => {
    const cells = {
      part: row.id,
      stock: one.stock,
      sheet: String(one.index + 1),
      at_x: written(one.x),
      at_y: written(one.y),
      ...(one.rotation === 0 ? {} : { turn: `${String(one.rotation)}°` }),
      ...(laid.order.mirrored.has(one.part) ? { mirrored: 'yes' } : {}),
    };
    return { kind: 'insert-row', table: 'lock', id: newId('lock'), cells };
  });
}
