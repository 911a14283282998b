import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Answers, Question } from '../../extension/protocol/messages.ts';
import type { TraceView } from '../../extension/protocol/trace-view.ts';
import { askTrace } from '../../webview/panes/trace-dialog.ts';
import type { Ask } from '../../webview/suggest/suggester.ts';

const cell = { table: 'part', id: 'door_base', occurrence: 0, column: 'shape' };

const square: TraceView = {
  message: '',
  sentence: '24 in × 15 in, from 4 points.',
  picture: {
    box: { left: 0, bottom: 0, right: 600, top: 400 },
    marks: [
      {
        kind: 'line',
        role: 'outline',
        at: [0, 0, 600, 0, 600, 400, 0, 400],
        closed: true,
        filled: true,
        holes: [],
        arrow: false,
        row: '',
        owner: '',
      },
    ],
  },
};

const questions: Question[] = [];

function host(view: TraceView): Ask {
  const ask = (question: Question): Promise<Answers[keyof Answers]> => {
    questions.push(question);
    return Promise.resolve(view);
  };
  return ask as Ask;
}

function part(selector: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`no ${selector}`);
  return found;
}

async function type(text: string): Promise<void> {
  const list = part('.trace-list') as HTMLTextAreaElement;
  list.value = text;
  list.dispatchEvent(new Event('input', { bubbles: true }));
  await vi.advanceTimersByTimeAsync(200);
}

beforeEach(() => {
  vi.useFakeTimers();
  questions.length = 0;
});

afterEach(() => {
  vi.useRealTimers();
  document.body.replaceChildren();
});

describe('askTrace', () => {
  test('the outline is shown while points are typed, and agreed to with its name', async () => {
    const agreed = askTrace(host(square), cell);
    expect(part('[data-action="dialog-agree"]').hasAttribute('disabled')).toBe(true);
    await type('0, 0\n24, 0\n24, 15\n0, 15');
    expect(questions.at(-1)).toMatchObject({
      ask: 'trace',
      wish: { mode: 'points', smooth: false },
    });
    expect(part('.trace-picture').querySelectorAll('path').length).toBeGreaterThan(0);
    expect(part('.trace-picture').getAttribute('aria-label')).toContain('24 in × 15 in');
    part('[data-action="dialog-agree"]').click();
    expect(await agreed).toEqual({
      wish: { list: '0, 0\n24, 0\n24, 15\n0, 15', mode: 'points', smooth: false },
      name: 'door_base',
    });
  });

  test('points that make no outline say why and cannot be agreed to', async () => {
    const message = 'The outline crosses itself at (5 in, 5 in).';
    const put = askTrace(host({ message, sentence: '', picture: undefined }), cell);
    await type('0, 0');
    expect(part('[role="status"]').textContent).toBe(message);
    part('[data-action="dialog-agree"]').click();
    expect(document.querySelector('dialog')).not.toBeNull();
    part('[data-action="dialog-close"]').click();
    expect(await put).toBeUndefined();
  });
});
