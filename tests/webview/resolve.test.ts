import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Question } from '../../extension/protocol/messages.ts';
import type { ResolveView } from '../../extension/protocol/resolve-view.ts';
import type { JobView } from '../../extension/protocol/views.ts';
import { ResolvePage } from '../../webview/panes/resolve.ts';
import type { Ask } from '../../webview/suggest/suggester.ts';

const one: ResolveView = {
  message: 'One cell.',
  conflicts: [
    {
      key: 'part/board#0/shape',
      title: 'Board (board): shape',
      what: 'Both changed this cell.',
      base: undefined,
      baseKnown: false,
      ours: 'rect(48in, 12in)',
      theirs: undefined,
      choices: ['ours', 'theirs'],
    },
  ],
};

afterEach(() => {
  document.body.replaceChildren();
});

async function shown(view = one) {
  const asked: Question[] = [];
  const ask = ((question: Question) => {
    asked.push(question);
    if (question.ask === 'conflicts') return Promise.resolve(view);
    if (question.ask === 'settle') return Promise.resolve({ ok: true });
    return Promise.resolve([{ choice: 'ours', price: '12.00 USD', materials: '9.00 USD' }]);
  }) as unknown as Ask;
  const page = new ResolvePage(ask, () => undefined);
  document.body.append(page.root);
  page.paint({ state: 'conflicted' } as JobView, 1);
  await vi.waitFor(() => {
    expect(page.root.querySelector('h2')).not.toBeNull();
  });
  return { page, asked };
}

describe('ResolvePage', () => {
  test('shows each conflict with its texts and what a side comes to', async () => {
    const { page } = await shown();
    await vi.waitFor(() => {
      expect(page.root.textContent).toContain('Ours: price 12.00 USD, materials in it 9.00 USD');
    });
    const texts = [...page.root.querySelectorAll('dd')].map((dd) => dd.textContent);
    expect(texts).toEqual(['not known', 'rect(48in, 12in)', 'nothing here']);
  });

  test('a choice settles that conflict alone', async () => {
    const { page, asked } = await shown();
    page.root.querySelector<HTMLElement>('.conflict [data-action="settle"]')?.click();
    await vi.waitFor(() => {
      expect(asked).toContainEqual({ ask: 'settle', choices: { 'part/board#0/shape': 'ours' } });
    });
  });

  test('where rows were moved on both sides, our places can be taken for all of them at once', async () => {
    const [conflict] = one.conflicts;
    if (conflict === undefined) throw new Error('There is one conflict.');
    const keys = ['part/board#0/order', 'part/lid#0/order', conflict.key];
    const { page, asked } = await shown({
      message: 'Three.',
      conflicts: keys.map((key) => ({ ...conflict, key })),
    });
    const places = [...page.root.querySelectorAll<HTMLElement>('[data-action="settle"]')].find(
      ({ textContent }) => textContent === 'Take our places of all rows',
    );
    places?.click();
    await vi.waitFor(() => {
      const choices = { 'part/board#0/order': 'ours', 'part/lid#0/order': 'ours' };
      expect(asked).toContainEqual({ ask: 'settle', choices });
    });
  });

  test('where no cell is in conflict both sides are put together', async () => {
    const { page, asked } = await shown({ message: 'None.', conflicts: [] });
    page.root.querySelector<HTMLElement>('[data-action="settle"]')?.click();
    await vi.waitFor(() => {
      expect(asked).toContainEqual({ ask: 'settle', choices: {} });
    });
  });

  test('asks again when the job has moved on, and not for each message about it', async () => {
    const { page, asked } = await shown();
    const count = (): number => asked.filter((question) => question.ask === 'conflicts').length;
    page.paint({ state: 'conflicted' } as JobView, 1);
    expect(count()).toBe(1);
    page.paint({ state: 'conflicted' } as JobView, 2);
    expect(count()).toBe(2);
  });

  test('an answer is shown though the job moved on before it came; then it is asked once more', async () => {
    const answers: ((view: ResolveView) => void)[] = [];
    const ask = ((question: Question) =>
      question.ask === 'conflicts'
        ? new Promise((resolve) => answers.push(resolve))
        : Promise.resolve([])) as unknown as Ask;
    const page = new ResolvePage(ask, () => undefined);
    for (const revision of [1, 2, 3]) page.paint({ state: 'conflicted' } as JobView, revision);
    expect(answers).toHaveLength(1);
    answers[0]?.(one);
    await vi.waitFor(() => {
      expect(answers).toHaveLength(2);
    });
    expect(page.root.querySelector('h2')?.textContent).toBe('1 conflict');
    answers[1]?.({ message: 'None.', conflicts: [] });
    await vi.waitFor(() => {
      expect(page.root.querySelector('h2')?.textContent).toBe('0 conflicts');
    });
    expect(answers).toHaveLength(2);
  });

  test('an answer that comes when the markers are gone shows nothing', async () => {
    const answers: ((view: ResolveView) => void)[] = [];
    const ask = (() => new Promise((resolve) => answers.push(resolve))) as unknown as Ask;
    const page = new ResolvePage(ask, () => undefined);
    page.paint({ state: 'conflicted' } as JobView, 1);
    page.paint({ state: 'ready' } as JobView, 2);
    answers[0]?.(one);
    page.paint({ state: 'conflicted' } as JobView, 3);
    page.paint({ state: 'ready' } as JobView, 4);
    await vi.waitFor(() => {
      expect(answers).toHaveLength(2);
    });
    expect(page.root.childElementCount).toBe(0);
  });

  test('is gone as soon as the file has no markers', async () => {
    const { page } = await shown();
    page.paint({ state: 'ready' } as JobView, 2);
    expect(page.root.hidden).toBe(true);
    expect(page.root.childElementCount).toBe(0);
  });
});
