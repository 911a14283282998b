import {
  contourDrawing,
  handsOf,
  panelSkin,
  panelSkinQuestion,
  parkedPanel,
  picturedBases,
  picturedPanel,
  planDrawing,
  sectionDrawing,
  skinProfile,
  skinWords,
  stripDrawing,
  type AnsweredRow,
  type Drawing,
  type PanelSkin,
  type PanelSkinQuestion,
  type PicturedPanel,
  type PicturedRing,
  type SkinReply,
  type Snapshot,
} from '../../engine/index.ts';
import type {
  MovableView,
  PanelChoice,
  PanelHand,
  PanelView,
  PanelWish,
} from '../../protocol/panel-view.ts';
import { pictureView } from './picture-view.ts';
import { sizeInWords } from './size-words.ts';
import { skinView } from './skin-view.ts';

const handLabels: Readonly<Record<PanelHand, string>> = {
  drawn: 'As placed',
  left: 'Left',
  right: 'Right',
};

/** The key of a row within its table, as the grid knows it. */
function keyOf({ id, occurrence }: AnsweredRow): string {
  return occurrence === 0 ? id : `${id}#${String(occurrence)}`;
}

function rowName(row: AnsweredRow): string {
  return `${row.table}/${keyOf(row)}`;
}

function nameOf(row: AnsweredRow): string {
  const { result } = row.cell('name');
  if (result.state !== 'value' || result.value.kind !== 'text') return row.id;
  return result.value.text.trim() === '' ? row.id : result.value.text.trim();
}

function choice(row: AnsweredRow): PanelChoice {
  return { value: keyOf(row), label: nameOf(row) };
}

/** What a wish comes to on the job as it is now. */
export interface Wished {
  readonly snapshot: Snapshot;
  readonly wish: PanelWish;
  readonly bases: readonly AnsweredRow[];
  readonly hands: readonly PanelHand[];
  readonly base: AnsweredRow | undefined;
  readonly panel: PicturedPanel | undefined;
  readonly ring: PicturedRing | undefined;
}

/** The picture that a wish names, or the first of its kind where the name is gone. */
export function wished(wish: PanelWish, snapshot: Snapshot): Wished {
  const { workbook: answers, book, settings } = snapshot;
  const source = { answers, book, settings };
  const bases = picturedBases(source);
  const base = bases.find((row) => keyOf(row) === wish.base) ?? bases[0];
  if (base === undefined)
    return { snapshot, wish, bases, hands: [], base, panel: undefined, ring: undefined };
  const hands = handsOf(base, answers);
  const hand = hands.includes(wish.hand) ? wish.hand : 'drawn';
  const panel = picturedPanel(base, hand, source);
  const ring = panel?.rings.find(({ row }) => keyOf(row) === wish.ring) ?? panel?.rings[0];
  const ringKey = ring === undefined ? '' : keyOf(ring.row);
  return {
    snapshot,
    wish: { ...wish, base: keyOf(base), hand, ring: ringKey },
    bases,
    hands,
    base,
    panel,
    ring,
  };
}

/** A skin as far as it is known, or the sentence why there is none. */
export interface SkinFound {
  readonly skin: PanelSkin | undefined;
  readonly message: string;
}

/** What has to be worked out for a picture that shows the skin; undefined for one that does not. */
export function wishedSkin({ wish, panel, snapshot }: Wished): PanelSkinQuestion | undefined {
  if (panel === undefined || (wish.picture !== 'skin' && wish.picture !== 'section'))
    return undefined;
  return panelSkinQuestion(panel, snapshot.workbook);
}

/** The skin that was answered. */
export function foundSkin({ panel }: Wished, reply: SkinReply | undefined): SkinFound {
  const skin = panel === undefined || reply === undefined ? undefined : panelSkin(panel, reply);
  if (skin !== undefined) return { skin, message: '' };
  const message =
    reply === undefined
      ? 'The skin is not calculated yet.'
      : 'The skin does not come to rest: look at rings that stand close to each other or to the edge.';
  return { skin, message };
}

/** The drawing that is wished for; undefined where the job does not say enough for it. */
export function wishedDrawing(
  { wish, panel, ring }: Wished,
  skin: PanelSkin | undefined,
): Drawing | undefined {
  if (panel === undefined) return undefined;
  if (wish.picture === 'plan') return planDrawing(panel);
  if (wish.picture === 'skin') return skin && contourDrawing(panel, skin);
  if (ring === undefined) return undefined;
  if (wish.picture === 'strip') return stripDrawing(ring, panel);
  const profile = skin === undefined ? [] : skinProfile(skin, ring, panel);
  return sectionDrawing(ring, panel, profile);
}

function whyNot({ wish, base, panel, ring }: Wished, noSkin: string): string {
  if (base === undefined) return 'No base yet: insert the kit “Panel”, or a row of the kind base.';
  if (panel === undefined)
    return `${nameOf(base)} has no outline yet: fill in its shape, for example roundrect(26 in, 15 in, 2 in).`;
  if (wish.picture === 'skin') return noSkin;
  if (ring === undefined && wish.picture !== 'plan')
    return `Nothing stands on ${panel.name} yet: insert a ring.`;
  return '';
}

/** Where a row's own cells place it, in mm. */
function placeOf(row: AnsweredRow): { readonly x: number; readonly y: number } {
  const at = (column: string): number => {
    const { result } = row.cell(column);
    return result.state === 'value' && result.value.kind === 'quantity' ? result.value.base : 0;
  };
  return { x: at('at_x'), y: at('at_y') };
}

/** Says why a row stays where it is, if it does. */
function heldBy(row: AnsweredRow, lock: string): string {
  if (lock !== '') return lock;
  const formula = ['at_x', 'at_y'].find((column) => row.cell(column).formula);
  return formula === undefined
    ? ''
    : `${nameOf(row)} is placed by a formula: change ${formula} in its cell.`;
}

function movables(known: PicturedPanel | undefined, lock: string): readonly MovableView[] {
  if (known === undefined) return [];
  const panel = parkedPanel(known);
  const rings = panel.rings.map(({ row, ring }) => ({ row, centre: ring.centre }));
  const holes = panel.holes.filter(({ under }) => under === undefined);
  const levels = panel.levels.map(({ row }) => ({ row, centre: placeOf(row) }));
  return [...rings, ...holes, ...levels].map(({ row, centre }) => ({
    row: rowName(row),
    x: centre.x,
    y: centre.y,
    held: heldBy(row, lock),
  }));
}

/** Every row of a panel's picture with its name, kind and main size. */
function rowWords(
  panel: PicturedPanel | undefined,
  snapshot: Snapshot,
): Readonly<Record<string, string>> {
  if (panel === undefined) return {};
  const rows = [
    panel.row,
    ...[...panel.holes, ...panel.levels].map(({ row }) => row),
    ...panel.rings.flatMap(({ row, baffle, driver }) => [row, baffle?.row, driver?.row]),
  ];
  const entries = rows.flatMap((row) => {
    if (row === undefined) return [];
    const kind = snapshot.book.kinds.get(row.kind)?.name ?? row.table;
    const size = sizeInWords(row, snapshot);
    const name = `${nameOf(row)}, ${kind.toLowerCase()}`;
    return [[rowName(row), size === '' ? name : `${name}, ${size}`]];
  });
  return Object.fromEntries(entries) as Readonly<Record<string, string>>;
}

/** Step that dragged parts are put down to, in mm: 1/16 in, or 1 mm. */
export function placeStep({ settings }: Snapshot): number {
  return settings.units === 'in' ? 25.4 / 16 : 1;
}

type Shown = Pick<PanelView, 'title' | 'words' | 'message' | 'drawing' | 'skin' | 'file'>;

/** The picture itself, or why there is none. */
function shownPicture(found: Wished, { skin, message }: SkinFound): Shown {
  const { base, picture } = found.wish;
  const drawing = wishedDrawing(found, skin);
  const { panel } = found;
  if (drawing === undefined || panel === undefined)
    return {
      title: panel?.name ?? 'Panel',
      words: [],
      message: whyNot(found, message),
      drawing: undefined,
      skin: undefined,
      file: `${base}-${picture}`,
    };
  const { title, words, id } = drawing;
  const shown = { title, message: '', file: `${base}-${id}` };
  // On screen a skin is seen in space; its contours are for files.
  if (picture === 'skin' && skin !== undefined)
    return {
      ...shown,
      words: skinWords(panel, skin),
      drawing: undefined,
      skin: skinView(panel, skin),
    };
  return { ...shown, words, drawing: pictureView(drawing), skin: undefined };
}

/** A picture of a panel with what it can be chosen and changed by; `lock` says why nothing can be changed. */
export function panelView(found: Wished, skin: SkinFound, lock: string): PanelView {
  const { panel, snapshot } = found;
  return {
    ...shownPicture(found, skin),
    wish: found.wish,
    bases: found.bases.map(choice),
    hands: found.hands.map((hand) => ({ value: hand, label: handLabels[hand] })),
    rings: (panel?.rings ?? []).map(({ row }) => choice(row)),
    rows: rowWords(panel, snapshot),
    movables: movables(panel, lock),
    step: placeStep(snapshot),
    mirrored: found.wish.hand === 'left',
  };
}
