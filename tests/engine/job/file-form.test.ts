import { describe, expect, test } from 'vitest';
import { fileForm } from '../../../extension/engine/job/file-form.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';

describe('fileForm', () => {
  test.each([
    ['format = 1\n\n[job]\ntitle = "Door"\n', 'job'],
    ['format = 1\n\n[book]\ntitle = "Shop"\n', 'book'],
    ['format = 1\n', 'job'],
    // [J3] If there are more heads, the first counts.
    ['[job]\n\n[book]\n', 'job'],
    ['[[book]]\nid = "a"\n', 'job'],
  ])('[J3] the first head says what a file is', (text, form) => {
    expect(fileForm(readFile(text))).toBe(form);
  });
});
