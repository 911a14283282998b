import { describe, expect, test } from 'vitest';
import { echo } from '../../extension/worker/echo.ts';

describe('echo', () => {
  test('gives the text back after counting to the end', () => {
    expect(echo({ kind: 'echo', text: 'baffle', steps: 7 }, () => undefined)).toEqual({
      text: 'baffle',
      steps: 7,
    });
  });

  test('never tells a share above the whole', () => {
    const shares: number[] = [];
    echo({ kind: 'echo', text: 'baffle', steps: 37 }, (share) => shares.push(share));
    expect(Math.max(...shares)).toBeLessThanOrEqual(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
  });
});
