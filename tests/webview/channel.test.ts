import { afterEach, describe, expect, test, vi } from 'vitest';
import type { FromWebview } from '../../extension/protocol/messages.ts';
import { Channel, NotAnswered } from '../../webview/channel.ts';

const row = { table: 'part', id: 'base', occurrence: 0 };

afterEach(() => {
  vi.useRealTimers();
});

describe('Channel', () => {
  test('answers reach their own questions, in whatever order they come', async () => {
    const posted: FromWebview[] = [];
    const channel = new Channel((message) => posted.push(message));
    const first = channel.ask({ ask: 'where-from', line: 'a' });
    const second = channel.ask({ ask: 'where-from', line: 'b' });
    channel.receive({ type: 'reply', request: second.request, answer: { title: 'B', steps: [] } });
    channel.receive({ type: 'reply', request: first.request, answer: { title: 'A', steps: [] } });
    expect((await first.answer).title).toBe('A');
    expect((await second.answer).title).toBe('B');
    expect(posted).toHaveLength(2);
  });

  test('a refusal says why', async () => {
    const channel = new Channel(() => undefined);
    const asked = channel.ask({ ask: 'card', row });
    channel.receive({ type: 'refused', request: asked.request, message: 'The row is gone.' });
    await expect(asked.answer).rejects.toThrow('The row is gone.');
  });

  test('nothing waits for ever', async () => {
    vi.useFakeTimers();
    const channel = new Channel(() => undefined);
    const { answer } = channel.ask({ ask: 'card', row });
    const outcome = expect(answer).rejects.toBeInstanceOf(NotAnswered);
    await vi.advanceTimersByTimeAsync(31_000);
    await outcome;
  });
});
