import { describe, expect, test } from 'vitest';
import * as vscode from 'vscode';
import { savePicture } from '../../extension/host/save-picture.ts';
import { editor } from '../helpers/fake-vscode.ts';

const job = vscode.Uri.parse('file:/jobs/door.paneljob');

async function written(name: string): Promise<Uint8Array | undefined> {
  try {
    return await vscode.workspace.fs.readFile(vscode.Uri.parse(`file:/jobs/${name}`));
  } catch {
    return undefined;
  }
}

describe('savePicture', () => {
  test('SVG is written as text beside the job', async () => {
    await savePicture(job, {
      type: 'save-picture',
      name: 'base-plan',
      format: 'svg',
      content: '<svg/>',
    });
    expect(new TextDecoder().decode(await written('base-plan.svg'))).toBe('<svg/>');
  });

  test('PNG is written as the bytes that its base64 stands for', async () => {
    // The first bytes of every PNG file (ISO/IEC 15948, 5.2).
    await savePicture(job, {
      type: 'save-picture',
      name: 'base-plan',
      format: 'png',
      content: 'iVBORw0KGgo=',
    });
    expect([...((await written('base-plan.png')) ?? [])]).toEqual([
      0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a,
    ]);
  });

  test('a name cannot lead out of the job’s folder', async () => {
    await savePicture(job, {
      type: 'save-picture',
      name: '../../etc/base',
      format: 'svg',
      content: '<svg/>',
    });
    expect(await written('-etc-base.svg')).toBeDefined();
  });

  test('nothing is written where the dialog was closed or there is no picture', async () => {
    editor.saves = false;
    const closed = { type: 'save-picture', name: 'closed', format: 'svg', content: 'x' } as const;
    await savePicture(job, closed);
    editor.saves = true;
    await savePicture(job, { ...closed, name: 'empty', content: '' });
    expect([await written('closed.svg'), await written('empty.svg')]).toEqual([
      undefined,
      undefined,
    ]);
    expect(editor.warnings.at(-1)).toBe('This picture could not be written.');
  });
});
