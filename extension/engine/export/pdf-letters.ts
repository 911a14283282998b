/** The two fonts that every reader of PDF has by itself. */
export type PdfFont = 'F1' | 'F2';

/** Widths of the signs from space to ~ in thousandths of the size (Adobe's metrics of Helvetica and Helvetica-Bold). */
const widths: Readonly<Record<PdfFont, readonly number[]>> = {
  F1: [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556,
    556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667,
    611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667,
    667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500,
    222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
  ],
  F2: [
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556,
    556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611, 975, 722, 722, 722, 722, 667,
    611, 778, 722, 278, 556, 722, 611, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667,
    667, 611, 333, 278, 333, 584, 556, 333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556,
    278, 889, 611, 611, 611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
  ],
};

/** Widths of other signs, in both fonts. */
const otherWidths: Readonly<Record<string, readonly [number, number]>> = {
  '–': [556, 556],
  '—': [1000, 1000],
  '‘': [222, 278],
  '’': [222, 278],
  '“': [333, 500],
  '”': [333, 500],
  '…': [1000, 1000],
  '•': [350, 350],
  '€': [556, 556],
  '×': [584, 584],
  '÷': [584, 584],
  '±': [584, 584],
  '°': [400, 400],
  '¼': [834, 834],
  '½': [834, 834],
  '¾': [834, 834],
  '²': [333, 333],
  '³': [333, 333],
  ß: [611, 611],
  Ø: [778, 778],
  ø: [611, 611],
  Æ: [1000, 1000],
  æ: [889, 889],
};

/** Signs of the standard fonts' encoding (WinAnsi) that lie outside ISO 8859-1. */
const winAnsi: Readonly<Record<string, number>> = {
  ...{ '€': 0x80, '‚': 0x82, ƒ: 0x83, '„': 0x84, '…': 0x85, '†': 0x86, '‡': 0x87, ˆ: 0x88 },
  ...{ '‰': 0x89, Š: 0x8a, '‹': 0x8b, Œ: 0x8c, Ž: 0x8e, '‘': 0x91, '’': 0x92, '“': 0x93 },
  ...{ '”': 0x94, '•': 0x95, '–': 0x96, '—': 0x97, '˜': 0x98, '™': 0x99, š: 0x9a, '›': 0x9b },
  ...{ œ: 0x9c, ž: 0x9e, Ÿ: 0x9f },
};

/** Signs that the fonts do not have and that lose nothing when they are written otherwise. */
const spelled: Readonly<Record<string, string>> = {
  ...{ '≈': 'about', '−': '-', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '→': '->' },
  ...{ '≤': '<=', '≥': '>=', '′': "'", '″': '"', '\u2009': ' ', '\u202f': ' ', '\n': ' ' },
};

/** Letters that do not come apart into a letter and its accent. */
const nearLetters: Readonly<Record<string, string>> = {
  ...{ ł: 'l', Ł: 'L', đ: 'd', Đ: 'D', ı: 'i', ħ: 'h', Ħ: 'H', ŧ: 't', Ŧ: 'T', ŋ: 'n', ĸ: 'k' },
};

function codeOf(sign: string): number | undefined {
  const code = winAnsi[sign] ?? sign.codePointAt(0) ?? 0;
  const own = winAnsi[sign] !== undefined;
  return own || (code >= 32 && code < 127) || (code >= 160 && code < 256) ? code : undefined;
}

/** What stands in for a sign that the fonts do not have: its letter without the accent, else `?`. */
function nearSign(sign: string): string {
  const base = nearLetters[sign] ?? sign.normalize('NFD').charAt(0);
  return codeOf(base) === undefined ? '?' : base;
}

/** A text in signs that the fonts have. */
export function fontSigns(text: string): string {
  return Array.from(text.normalize('NFC'), (sign) => {
    const near = spelled[sign];
    if (near !== undefined) return near;
    return codeOf(sign) === undefined ? nearSign(sign) : sign;
  }).join('');
}

/** Signs of a text that a PDF in these fonts cannot show, each with what stands in for it. */
export function lackingSigns(text: string): ReadonlyMap<string, string> {
  const lacking = Array.from(text.normalize('NFC')).filter(
    (sign) => spelled[sign] === undefined && codeOf(sign) === undefined,
  );
  return new Map(lacking.map((sign) => [sign, nearSign(sign)]));
}

function encoded(sign: string): string {
  if ('()\\'.includes(sign)) return `\\${sign}`;
  const code = codeOf(sign) ?? 63;
  return code < 127 ? sign : `\\${code.toString(8).padStart(3, '0')}`;
}

/** A text as a PDF writes it, in brackets. */
export function pdfText(text: string): string {
  return `(${Array.from(fontSigns(text), encoded).join('')})`;
}

function signWidth(sign: string, font: PdfFont): number {
  const other = otherWidths[sign];
  if (other !== undefined) return other[font === 'F1' ? 0 : 1];
  // An accent makes no letter wider.
  const base = sign.normalize('NFD').charCodeAt(0);
  return widths[font][base - 32] ?? 556;
}

/** Width of a text in points, set in a size in points. */
export function textWidth(text: string, font: PdfFont, size: number): number {
  let thousandths = 0;
  for (const sign of fontSigns(text)) thousandths += signWidth(sign, font);
  return (thousandths * size) / 1000;
}
