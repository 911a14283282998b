/** Sizes in mm. `length` lies along the roll or the long side of a sheet unless it is turned. */
export interface Blank {
  readonly length: number;
  readonly width: number;
  readonly count: number;
}

/** How the blanks of one size lie: `across` side by side, `rows` of them, `along` mm each. */
export interface LaidSize {
  readonly blank: Blank;
  readonly turned: boolean;
  readonly across: number;
  readonly rows: number;
  /** Blanks that found room beside those of larger sizes. */
  readonly beside: number;
  readonly along: number;
}

export type RollLayout =
  | { readonly fits: true; readonly length: number; readonly sizes: readonly LaidSize[] }
  | { readonly fits: false; readonly tooWide: Blank };

// Tape and bolt are not measured closer than this.
const touchMm = 0.01;

/** How many times `part` goes into `whole`, within a hundredth of a millimetre. */
export function timesInto(part: number, whole: number): number {
  return part > 0 ? Math.max(0, Math.floor((whole + touchMm) / part)) : 0;
}

/**
 * Length of a roll (mm) that takes these blanks, laid in rows across the bolt.
 *
 * Each size lies in equal rows, lengthways or turned, whichever needs less of the roll; with
 * `turns` false every blank keeps its length along the roll (nap, grain or stretch). For one size
 * that cannot be turned this is exact. Smaller sizes use the room left beside larger ones, then
 * take rows of their own; a better layout may exist.
 *
 * @returns `tooWide` names a blank that no permitted way lies across the bolt
 */
export function rollLayout(bolt: {
  readonly width: number;
  readonly blanks: readonly Blank[];
  readonly turns: boolean;
}): RollLayout {
  const sizes: { blank: Blank; turned: boolean; along: number; acrossMm: number }[] = [];
  for (const blank of mergedSizes(bolt.blanks)) {
    const turned = isBetterTurned(blank, bolt);
    const [along, acrossMm] = turned ? [blank.width, blank.length] : [blank.length, blank.width];
    if (timesInto(acrossMm, bolt.width) === 0) return { fits: false, tooWide: blank };
    sizes.push({ blank, turned, along, acrossMm });
  }
  sizes.sort((a, b) => b.along - a.along || b.acrossMm - a.acrossMm);
  // Room beside each row already laid; rows of equal room are kept together with their number.
  let open: { room: number; rows: number }[] = [];
  let length = 0;
  const laid = sizes.map(({ blank, turned, along, acrossMm }): LaidSize => {
    const filled = fillBeside(open, acrossMm, blank.count);
    const across = timesInto(acrossMm, bolt.width);
    const rest = blank.count - filled.placed;
    const rows = Math.ceil(rest / across);
    length += rows * along;
    const last = rest - (rows - 1) * across;
    open = filled.open;
    if (rows > 1) open.push({ room: bolt.width - across * acrossMm, rows: rows - 1 });
    if (rows > 0) open.push({ room: bolt.width - last * acrossMm, rows: 1 });
    return { blank, turned, across, rows, beside: filled.placed, along };
  });
  return { fits: true, length, sizes: laid };
}

function fillBeside(
  open: readonly { readonly room: number; readonly rows: number }[],
  acrossMm: number,
  count: number,
): { placed: number; open: { room: number; rows: number }[] } {
  let placed = 0;
  const left: { room: number; rows: number }[] = [];
  for (const { room, rows } of open) {
    const each = timesInto(acrossMm, room);
    const full = each === 0 ? 0 : Math.min(rows, Math.floor((count - placed) / each));
    placed += full * each;
    if (full > 0) left.push({ room: room - each * acrossMm, rows: full });
    const part = each === 0 || full === rows ? 0 : Math.min(each, count - placed);
    placed += part;
    if (part > 0) left.push({ room: room - part * acrossMm, rows: 1 });
    const untouched = rows - full - (part > 0 ? 1 : 0);
    if (untouched > 0) left.push({ room, rows: untouched });
  }
  return { placed, open: left };
}

function isBetterTurned(
  blank: Blank,
  bolt: { readonly width: number; readonly turns: boolean },
): boolean {
  if (!bolt.turns) return false;
  const lengthways = timesInto(blank.width, bolt.width);
  const turned = timesInto(blank.length, bolt.width);
  if (turned === 0) return false;
  if (lengthways === 0) return true;
  const straight = Math.ceil(blank.count / lengthways) * blank.length;
  return Math.ceil(blank.count / turned) * blank.width < straight - touchMm;
}

/** Blanks of the same size counted together, in the order they first appear. */
export function mergedSizes(blanks: readonly Blank[]): readonly Blank[] {
  const sizes = new Map<string, Blank>();
  for (const blank of blanks) {
    if (blank.count <= 0) continue;
    const key = `${blank.length.toFixed(3)}×${blank.width.toFixed(3)}`;
    const known = sizes.get(key);
    sizes.set(key, known ? { ...known, count: known.count + blank.count } : blank);
  }
  return [...sizes.values()];
}

/**
 * How many blanks of one size a sheet takes in equal rows, lying one way (the better one; only
 * lengthways where `turns` is false). All sizes in mm.
 */
export function blanksOnSheet(
  blank: { readonly length: number; readonly width: number },
  sheet: { readonly length: number; readonly width: number },
  turns: boolean,
): number {
  const straight = timesInto(blank.length, sheet.length) * timesInto(blank.width, sheet.width);
  if (!turns) return straight;
  const turned = timesInto(blank.width, sheet.length) * timesInto(blank.length, sheet.width);
  return Math.max(straight, turned);
}
