/** A standard formula whose answer here is not OpenFormula's, and why. */
export interface Deviation {
  /** As OpenFormula writes it. */
  readonly formula: string;
  readonly openFormula: string;
  /** What it gives here: `refused` where checking refuses it, `ERR` where it has no answer. */
  readonly here: string;
  readonly why: string;
}

const typed = 'Text is never taken for a number; VALUE says where it is meant.';
const compared =
  'Values of two kinds are never equal, so comparing them is a slip and is said to be one.';

/** Every place where the standard functions and operators leave OpenFormula on purpose. */
export const deviations: readonly Deviation[] = [
  { formula: '("4"&"5")+2', openFormula: '47', here: 'refused', why: typed },
  { formula: '2+("4"&"5")', openFormula: '47', here: 'refused', why: typed },
  { formula: '-"7"', openFormula: '-7', here: 'refused', why: typed },
  {
    formula: '+"Hello"',
    openFormula: 'Hello',
    here: 'refused',
    why: 'A sign before a text says nothing.',
  },
  { formula: '"5"=5', openFormula: 'FALSE', here: 'refused', why: compared },
  { formula: '1<>"1"', openFormula: 'TRUE', here: 'refused', why: compared },
  { formula: 'TRUE()=1', openFormula: 'FALSE', here: 'refused', why: compared },
  { formula: 'FALSE()=0', openFormula: 'FALSE', here: 'refused', why: compared },
  {
    formula: 'IF(TRUE();"HI";8)',
    openFormula: 'HI',
    here: 'refused',
    why: 'A cell holds text or a number, so a formula does not give now the one and now the other.',
  },
  {
    formula: 'IF("";7;8)',
    openFormula: 'an error',
    here: '8',
    why: 'An empty text is a blank, and a blank condition does not hold.',
  },
  {
    formula: 'IF(FALSE();7)',
    openFormula: 'FALSE',
    here: 'blank',
    why: 'A column of lengths holds a length or nothing, never FALSE.',
  },
  {
    formula: 'IF(FALSE();7;)',
    openFormula: '0',
    here: 'blank',
    why: 'A branch left empty is nothing, not a zero that would be bought or cut.',
  },
  {
    formula: 'ISNUMBER(NA())',
    openFormula: 'FALSE',
    here: 'ERR',
    why: 'A value without an answer leaves no answer but where ISERROR or IFERROR asks.',
  },
  {
    formula: 'INT(0.57*100)',
    openFormula: '56, by binary arithmetic',
    here: '57',
    why: 'A number within one part in a billion of a whole step counts as that step.',
  },
];
