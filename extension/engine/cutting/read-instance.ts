import { failed, ok, type Result } from '../result.ts';
import type { CutInstance, Fixed, PackOffer, PacksInstance, Part, Stock } from './instance.ts';
import { centsIn } from './packs/choose-packs.ts';
import {
  given,
  idOf,
  InstanceFault,
  isFields,
  numberOf,
  objectsOf,
  refuse,
  wordOf,
  type Fields,
} from './read-fields.ts';

const kinds = ['rectangles', 'outlines', 'strips', 'bolt', 'packs'] as const;
const efforts = ['quick', 'live', 'refine', 'long'] as const;

/**
 * Reads an instance from parsed JSON: sizes in mm, numbers that make sense, ids that differ. The first
 * thing wrong is told in a sentence that names it.
 */
export function readInstance(json: unknown): Result<CutInstance> {
  try {
    return ok(instanceOf(json));
  } catch (fault) {
    if (fault instanceof InstanceFault) return failed(fault.problem);
    throw fault;
  }
}

function instanceOf(json: unknown): CutInstance {
  if (!isFields(json)) refuse('instance-not-object');
  const kind = kinds.find((one) => one === json['kind']);
  if (kind === undefined) refuse('instance-kind', { given: given(json['kind']) });
  if (kind === 'packs') {
    const need = numberOf(json, 'need', { where: '', least: 0 });
    return withMinimum(json, { kind, need, packs: objectsOf(json, 'packs', 1).map(packOf) });
  }
  const effort = wordOf(json, 'effort', efforts);
  const common = {
    stocks: unique(
      'stocks',
      objectsOf(json, 'stocks', 1).map((one, at) => stockOf(one, at, kind)),
    ),
    parts: unique(
      'parts',
      objectsOf(json, 'parts', 0).map((one, at) => partOf(one, at, kind)),
    ),
    kerf: numberOf(json, 'kerf', { where: '', least: 0, otherwise: 0 }),
    trim: numberOf(json, 'trim', { where: '', least: 0, otherwise: 0 }),
    seed: numberOf(json, 'seed', { where: '', least: 0, otherwise: 1 }),
    ...(effort === undefined ? {} : { effort }),
  };
  switch (kind) {
    case 'rectangles': {
      const method = wordOf(json, 'method', ['guillotine', 'free'] as const) ?? 'guillotine';
      return { kind, ...common, method, ...fixedOf(json) };
    }
    case 'outlines':
      return { kind, ...common, ...fixedOf(json) };
    case 'strips':
      return { kind, ...common, ...jointsOf(json) };
    case 'bolt':
      return { kind, ...common, ...repeatOf(json), ...fixedOf(json) };
  }
}

function fixedOf(json: Fields): { fixed?: readonly Fixed[] } {
  if (json['fixed'] === undefined) return {};
  const list = objectsOf(json, 'fixed', 0).map((fields, index): Fixed => {
    const id = idOf(fields, 'fixed: ', index);
    const where = `fixed ${id}: `;
    return {
      id,
      part: nameIn(fields, 'part', where),
      stock: nameIn(fields, 'stock', where),
      index: Math.floor(numberOf(fields, 'index', { where, least: 0, otherwise: 0 })),
      x: numberOf(fields, 'x', { where, least: 0 }),
      y: numberOf(fields, 'y', { where, least: 0 }),
      rotation: numberOf(fields, 'rotation', { where, least: 0, otherwise: 0 }),
    };
  });
  return { fixed: unique('fixed', list) };
}

function nameIn(fields: Fields, key: 'part' | 'stock', where: string): string {
  const value = fields[key];
  if (typeof value !== 'string')
    refuse('instance-id', { where: `${where}${key}`, given: given(value) });
  return value;
}

function jointsOf({ joints }: Fields): { joints?: { lap: number; least: number } } {
  if (joints === undefined) return {};
  if (!isFields(joints)) refuse('instance-not-object');
  const lap = numberOf(joints, 'lap', { where: 'joints: ', least: 0 });
  const least = numberOf(joints, 'least', { where: 'joints: ', least: 0, otherwise: 0 });
  return { joints: { lap, least: Math.max(least, lap + 1) } };
}

function repeatOf({ repeat }: Fields): { repeat?: { along: number; across: number } } {
  if (repeat === undefined) return {};
  if (!isFields(repeat)) refuse('instance-not-object');
  const along = numberOf(repeat, 'along', { where: 'repeat: ', least: 0, otherwise: 0 });
  const across = numberOf(repeat, 'across', { where: 'repeat: ', least: 0, otherwise: 0 });
  return { repeat: { along, across } };
}

function unique<One extends { readonly id: string }>(
  what: string,
  list: readonly One[],
): readonly One[] {
  const seen = new Set<string>();
  for (const { id } of list) {
    if (seen.has(id)) refuse('instance-twice', { what, given: id });
    seen.add(id);
  }
  return list;
}

type Kind = (typeof kinds)[number];

function stockOf(fields: Fields, index: number, kind: Kind): Stock {
  const id = idOf(fields, 'stocks: ', index);
  const where = `stock ${id}: `;
  const limit =
    fields['limit'] === undefined ? {} : { limit: numberOf(fields, 'limit', { where, least: 0 }) };
  const unit = kind === 'bolt' ? { otherwise: 1 } : {};
  const across = kind === 'strips' ? { otherwise: 0 } : {};
  return {
    id,
    length: numberOf(fields, 'length', { where, least: 0.01, ...unit }),
    width: numberOf(fields, 'width', { where, least: kind === 'strips' ? 0 : 0.01, ...across }),
    price: numberOf(fields, 'price', { where, least: 0, otherwise: 0 }),
    ...limit,
  };
}

function partOf(fields: Fields, index: number, kind: Kind): Part {
  const id = idOf(fields, 'parts: ', index);
  const where = `part ${id}: `;
  const points =
    fields['points'] === undefined ? undefined : loopOf(fields['points'], `${where}points`);
  const box = points === undefined ? undefined : boxOf(points);
  const side = (key: 'length' | 'width', otherwise: number | undefined): number =>
    numberOf(fields, key, {
      where,
      least: kind === 'strips' && key === 'width' ? 0 : 0.01,
      ...(otherwise === undefined ? {} : { otherwise }),
    });
  const { rotations, holes } = fields;
  return {
    id,
    length: side('length', box?.length),
    width: side('width', kind === 'strips' ? 0 : box?.width),
    count: Math.floor(numberOf(fields, 'count', { where, least: 0, otherwise: 1 })),
    ...(rotations === undefined
      ? {}
      : { rotations: turnsOf(rotations, `${where}rotations`, kind) }),
    ...(points === undefined ? {} : { points }),
    ...(Array.isArray(holes) ? { holes: holes.map((one) => loopOf(one, `${where}holes`)) } : {}),
  };
}

function turnsOf(value: unknown, where: string, kind: Kind): readonly number[] {
  const fits = (turn: unknown): turn is number =>
    typeof turn === 'number' && Number.isFinite(turn) && (kind === 'outlines' || turn % 90 === 0);
  if (!Array.isArray(value) || value.length === 0 || !value.every(fits)) {
    refuse('instance-rotation', { where, given: given(value) });
  }
  return value;
}

function isPoint(value: unknown): value is readonly [number, number] {
  return Array.isArray(value) && value.length === 2 && value.every((one) => Number.isFinite(one));
}

function loopOf(value: unknown, where: string): readonly (readonly [number, number])[] {
  if (!Array.isArray(value) || value.length < 3 || !value.every(isPoint)) {
    refuse('instance-points', { where, given: given(value) });
  }
  return value;
}

function boxOf(points: readonly (readonly [number, number])[]): { length: number; width: number } {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    length: Math.max(...xs) - Math.min(...xs),
    width: Math.max(...ys) - Math.min(...ys),
  };
}

function withMinimum(json: Fields, instance: PacksInstance): PacksInstance {
  if (json['minimum'] === undefined) return instance;
  const whole = { ...instance, minimum: numberOf(json, 'minimum', { where: '', least: 0 }) };
  if (centsIn(whole) === undefined) refuse('instance-cents', { given: given(json['minimum']) });
  return whole;
}

function packOf(fields: Fields, index: number): PackOffer {
  const id = idOf(fields, 'packs: ', index);
  const where = `pack ${id}: `;
  const { limit, breaks, least } = fields;
  return {
    id,
    size: numberOf(fields, 'size', { where, least: 1e-9 }),
    price: numberOf(fields, 'price', { where, least: 0 }),
    ...(limit === undefined ? {} : { limit: numberOf(fields, 'limit', { where, least: 0 }) }),
    ...(least === undefined ? {} : { least: numberOf(fields, 'least', { where, least: 0 }) }),
    ...(breaks === undefined
      ? {}
      : {
          breaks: objectsOf(fields, 'breaks', 0).map((one) => ({
            from: numberOf(one, 'from', { where: `${where}breaks: `, least: 1 }),
            price: numberOf(one, 'price', { where: `${where}breaks: `, least: 0 }),
          })),
        }),
  };
}
