import { describe, expect, test } from 'vitest';
import { readFile } from '../../extension/engine/index.ts';
import { postJob, postPreview } from '../../extension/host/post-job.ts';
import { previewOf, type Preview } from '../../extension/host/views/preview.ts';
import { unpackRows } from '../../extension/protocol/packing.ts';
import { sentOf, testPanel } from '../helpers/open-desk.ts';
import { doorPair } from '../helpers/sample-session.ts';

/** A job of 200 parts beside what the door pair has. */
function longJob(): Preview {
  const part = (index: number): string =>
    `[[part]]\nid = "pad_${String(index)}"\n\nkind = "extra"\n\nprice = "1 USD"\n`;
  const parts = Array.from({ length: 200 }, (_, index) => part(index));
  const shown = previewOf(readFile(`${doorPair}\n${parts.join('\n')}`));
  if (shown === undefined) throw new Error('The long job has no preview.');
  return shown;
}

describe('postPreview', () => {
  test('the first screenful is sent by itself, and everything in order behind it', async () => {
    const [panel, whole] = [testPanel(), testPanel()];
    const shown = longJob();
    const sending = postPreview(panel, shown, () => true);
    expect(panel.sent.map(({ type }) => type)).toEqual(['shown', 'rows']);
    expect(unpackRows(sentOf(panel, 'rows')[0]?.rows ?? '')).toHaveLength(80);
    await sending;
    postJob(whole, 0, shown);
    expect(panel.sent).toEqual(whole.sent);
    const parts = sentOf(panel, 'rows').filter(({ table }) => table === 'part');
    const ids = parts.flatMap(({ rows }) => unpackRows(rows).map(({ id }) => id));
    expect(ids).toEqual(shown.rows.get('part')?.map(({ id }) => id));
    expect(ids).toContain('pad_199');
  });

  test('nothing more is sent once the answers are known', async () => {
    const panel = testPanel();
    let answered = false;
    const sending = postPreview(panel, longJob(), () => !answered);
    answered = true;
    await sending;
    expect(panel.sent.map(({ type }) => type)).toEqual(['shown', 'rows']);
  });
});
