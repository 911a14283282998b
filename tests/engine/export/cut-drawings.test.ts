import { describe, expect, test } from 'vitest';
import { makeBill } from '../../../extension/engine/estimate/estimate.ts';
import { cutDrawings, rowName } from '../../../extension/engine/export/cut-drawings.ts';
import { fakeAnswers, fakeBook, inches } from '../../helpers/fake-answers.ts';
import { paperJob } from '../../helpers/paper-job.ts';

const answers = fakeAnswers(paperJob);
const bill = makeBill(answers, fakeBook, inches);

function drawingsOf(id: string, cuts = false) {
  const line = bill.lines.find((one) => one.id === id);
  if (line === undefined) throw new Error(`no line ${id}`);
  return cutDrawings({ line, settings: inches, name: rowName(answers), cuts });
}

describe('cutDrawings', () => {
  test('a sheet is drawn at full size with every part on it', () => {
    const [sheet, ...more] = drawingsOf('mdf_12');
    expect(more).toEqual([]);
    expect(sheet?.box).toMatchObject({ left: 0, bottom: 0 });
    const parts = sheet?.marks.filter((mark) => mark.kind === 'line' && mark.role === 'outline');
    expect(parts?.length).toBe(
      bill.lines.find(({ id }) => id === 'mdf_12')?.laid?.answer.placements.length,
    );
    expect(parts?.every(({ row }) => row?.table === 'part')).toBe(true);
  });

  test('the saw’s cuts are drawn and told when they are asked for', () => {
    const [plain] = drawingsOf('hardboard_6');
    const [sawn] = drawingsOf('hardboard_6', true);
    expect(plain?.marks.some(({ role }) => role === 'kerf')).toBe(false);
    expect(sawn?.marks.some(({ role }) => role === 'kerf')).toBe(true);
    expect(sawn?.words.some((words) => words.startsWith('Cut 1: '))).toBe(true);
  });

  test('what is not cut from whole stock has no drawing', () => {
    expect(drawingsOf('sealer')).toEqual([]);
  });
});
