import { strToU8, zipSync } from 'fflate/browser';
import { escaped } from '../escaped.ts';
import { columnLetters, type NumberLook, type Sheet, type SheetCell } from './sheet.ts';

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const packaged = 'http://schemas.openxmlformats.org/package/2006';
const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';

/** Text as a sheet holds it: letters that XML cannot hold at all are left out. */
function held(text: string): string {
  return escaped(text.replace(/[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, ''));
}

/** Places of the looks in the style sheet below. */
const styles: Readonly<Record<NumberLook | 'head', number>> = {
  head: 1,
  number: 2,
  money: 3,
  share: 4,
  sum: 5,
};

function styleSheet(digits: number): string {
  const money = digits === 0 ? '#,##0' : `#,##0.${'0'.repeat(digits)}`;
  const look = (format: number, font = 0): string =>
    `<xf numFmtId="${String(format)}" fontId="${String(font)}" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" applyFont="1"/>`;
  return `${head}<styleSheet xmlns="${main}"><numFmts count="3"><numFmt numFmtId="164" formatCode="${money}"/><numFmt numFmtId="165" formatCode="0.####"/><numFmt numFmtId="166" formatCode="0.##%"/></numFmts><fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="6">${look(0)}${look(0, 1)}${look(165)}${look(164)}${look(166)}${look(164, 1)}</cellXfs></styleSheet>`;
}

function cellXml(cell: SheetCell, at: string): string {
  if ('text' in cell) {
    const style = cell.look === undefined ? '' : ` s="${String(styles[cell.look])}"`;
    return `<c r="${at}"${style} t="inlineStr"><is><t xml:space="preserve">${held(cell.text)}</t></is></c>`;
  }
  const formula = cell.formula === undefined ? '' : `<f>${held(cell.formula)}</f>`;
  const style = String(styles[cell.look]);
  return `<c r="${at}" s="${style}">${formula}<v>${String(cell.number)}</v></c>`;
}

const widest = 48;

function lettersIn(cell: SheetCell | undefined): number {
  if (cell === undefined) return 0;
  return 'text' in cell ? cell.text.length : cell.number.toFixed(2).length;
}

function sheetXml({ rows }: Sheet): string {
  const count = Math.max(1, ...rows.map((row) => row.length));
  const columns = Array.from({ length: count }, (_, index) => {
    const letters = Math.max(...rows.map((row) => lettersIn(row[index])));
    const width = Math.min(widest, Math.max(8, letters + 2));
    const place = String(index + 1);
    return `<col min="${place}" max="${place}" width="${String(width)}" customWidth="1"/>`;
  });
  const lines = rows.map((row, index) => {
    const number = String(index + 1);
    const cells = row.map((cell, place) =>
      cell === undefined ? '' : cellXml(cell, `${columnLetters(place)}${number}`),
    );
    return `<row r="${number}">${cells.join('')}</row>`;
  });
  return `${head}<worksheet xmlns="${main}"><sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><cols>${columns.join('')}</cols><sheetData>${lines.join('')}</sheetData></worksheet>`;
}

function relation(id: number, type: string, target: string): string {
  return `<Relationship Id="rId${String(id)}" Type="${relations}/${type}" Target="${target}"/>`;
}

function relationships(...all: readonly string[]): string {
  return `${head}<Relationships xmlns="${packaged}/relationships">${all.join('')}</Relationships>`;
}

function contentTypes(count: number): string {
  const type = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
  const part = (name: string, kind: string): string =>
    `<Override PartName="/xl/${name}.xml" ContentType="${type}.${kind}+xml"/>`;
  const sheets = Array.from({ length: count }, (_, index) =>
    part(`worksheets/sheet${String(index + 1)}`, 'worksheet'),
  );
  return `${head}<Types xmlns="${packaged}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>${part('workbook', 'sheet.main')}${part('styles', 'styles')}${sheets.join('')}</Types>`;
}

// The day that stands in the archive: the same sheets give the same bytes on every day.
const day = '1980-01-01T00:00:00';

/**
 * Sheets as a workbook that spreadsheet programs open (Office Open XML, ECMA-376). Formulas are
 * calculated anew when it is opened. `digits` are those of the currency after the point.
 */
export function writeSheets(sheets: readonly Sheet[], digits: number): Uint8Array {
  const names = sheets.map(({ name }, index) => {
    const id = String(index + 1);
    return `<sheet name="${held(name)}" sheetId="${id}" r:id="rId${id}"/>`;
  });
  const book = `${head}<workbook xmlns="${main}" xmlns:r="${relations}"><sheets>${names.join('')}</sheets><calcPr fullCalcOnLoad="1"/></workbook>`;
  const toSheets = sheets.map((_, index) =>
    relation(index + 1, 'worksheet', `worksheets/sheet${String(index + 1)}.xml`),
  );
  const toStyles = relation(sheets.length + 1, 'styles', 'styles.xml');
  const files = {
    '[Content_Types].xml': contentTypes(sheets.length),
    '_rels/.rels': relationships(relation(1, 'officeDocument', 'xl/workbook.xml')),
    'xl/workbook.xml': book,
    'xl/_rels/workbook.xml.rels': relationships(...toSheets, toStyles),
    'xl/styles.xml': styleSheet(digits),
    ...Object.fromEntries(
      sheets.map((sheet, index) => [
        `xl/worksheets/sheet${String(index + 1)}.xml`,
        sheetXml(sheet),
      ]),
    ),
  };
  const bytes = Object.entries(files).map(([name, text]) => [name, strToU8(text)] as const);
  return zipSync(Object.fromEntries(bytes), { mtime: day, level: 6 });
}
