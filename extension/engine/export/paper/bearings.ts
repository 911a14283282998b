import { lengthText } from '../../estimate/amount.ts';
import { bearingFits, type BearingFit } from '../../estimate/bearing-fit.ts';
import { nameOf } from '../../estimate/cells.ts';
import { nothing, section, table, tag, type Content, type Html } from './html.ts';
import type { PaperGround } from './paper.ts';

function bearingCell({ bearing, near }: BearingFit, { settings }: PaperGround): Content {
  const size = lengthText(bearing, settings);
  if (near === undefined) return size;
  const other = lengthText(near.bearing, settings);
  const leaves = lengthText(near.gap, settings);
  const words = `no usual size: ${other} leaves ${leaves}`;
  return [size, tag('div', { class: 'small' }, words)];
}

/** Which bearing goes on which bit for each board that is routed with one. */
export function bearingTable(ground: PaperGround): Html {
  const { settings } = ground;
  const fits = bearingFits(ground);
  const rows = fits.map((fit): readonly Content[] => [
    nameOf(fit.row),
    fit.follows === undefined ? 'its template' : nameOf(fit.follows),
    lengthText(fit.bit, settings),
    bearingCell(fit, ground),
    fit.follows === undefined ? 'flush' : lengthText(fit.gap, settings),
  ]);
  const note =
    fits.length === 0
      ? nothing
      : tag(
          'p',
          { class: 'small lead' },
          'The bearing runs along what is named; the bit leaves the gap on each side. Try bit and bearing on a scrap first.',
        );
  return section(
    'Bearing to fit',
    note,
    table(['Piece', 'Runs along', 'Bit', 'Bearing', 'Each side'], ['', '', 'w', 's', 'w'], rows),
  );
}
