import type { GroupTotal } from '../../estimate/bill.ts';

/** Bench groups as headings on paper. */
export const groupWords: Readonly<Record<GroupTotal['group'], string>> = {
  structure: 'Structure',
  skin: 'Skin',
  finish: 'Finish',
  drivers: 'Drivers and wiring',
  shop: 'Shop',
};
