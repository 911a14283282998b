import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Question } from '../../extension/protocol/messages.ts';
import { askTemplate } from '../../webview/panes/kit-dialog.ts';
import type { Ask } from '../../webview/suggest/suggester.ts';
import { asksPreview, templateAsks } from './page/fake-asks.ts';

const host = ((question: Question) =>
  Promise.resolve(
    question.ask === 'asks-preview' ? asksPreview(question.answers) : templateAsks,
  )) as unknown as Ask;

function part(selector: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`no ${selector}`);
  return found;
}

async function type(text: string): Promise<void> {
  const field = part('[name="panel_length"]') as HTMLInputElement;
  field.value = text;
  field.dispatchEvent(new Event('input', { bubbles: true }));
  await vi.advanceTimersByTimeAsync(200);
}

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
  document.body.replaceChildren();
});

describe('askTemplate', () => {
  test('totals follow the answers, and what is agreed to are the answers', async () => {
    const agreed = askTemplate(host);
    await vi.advanceTimersByTimeAsync(200);
    expect(part('.kit-preview').textContent).toContain('1300.00 USD');
    await type('30 in');
    expect(part('.kit-preview').textContent).toContain('1500.00 USD');
    part('[data-action="dialog-agree"]').click();
    expect(await agreed).toEqual({ panel_length: '30 in', tweeter: 'yes' });
  });

  test('an answer beyond its limit is told and cannot be agreed to', async () => {
    const put = askTemplate(host);
    await vi.advanceTimersByTimeAsync(200);
    await type('48 in');
    expect(part('[data-question="panel_length"] .field-note').textContent).toContain('above');
    expect(part('[data-action="dialog-agree"]').hasAttribute('disabled')).toBe(true);
    part('[data-action="dialog-close"]').click();
    expect(await put).toBeUndefined();
  });

  test('a job without open questions asks nothing', async () => {
    const none = (() => Promise.resolve({ ...templateAsks, questions: [] })) as unknown as Ask;
    expect(await askTemplate(none)).toBe('nothing');
    expect(document.querySelector('dialog')).toBeNull();
  });
});
