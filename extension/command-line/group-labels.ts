import type { BillLine } from '../engine/index.ts';

/** Bench groups as they head the reports. */
export const groupLabels: Readonly<Record<BillLine['group'], string>> = {
  structure: 'Structure',
  skin: 'Skin',
  finish: 'Finish',
  drivers: 'Drivers and wiring',
  shop: 'Shop',
};
