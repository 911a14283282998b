import { describe, expect, test } from 'vitest';
import { readArguments } from '../../extension/command-line/arguments.ts';

function faultOf(...args: readonly string[]): string {
  const asked = readArguments(args);
  return asked.ok ? '' : asked.fault;
}

function requestOf(...args: readonly string[]) {
  const asked = readArguments(args);
  return asked.ok ? asked.request : undefined;
}

describe('readArguments', () => {
  test('reads a command, its file and its options in any order', () => {
    const request = { command: 'estimate', file: 'a.paneljob', json: true };
    expect(requestOf('estimate', 'a.paneljob', '--json')).toEqual(request);
    expect(requestOf('estimate', '--json', 'a.paneljob')).toEqual(request);
    expect(requestOf('check', 'a', 'b')).toEqual({
      command: 'check',
      files: ['a', 'b'],
      json: false,
    });
    expect(requestOf('bom', 'a', '--csv')).toEqual({ command: 'bom', file: 'a', csv: true });
    expect(requestOf('functions')).toEqual({ command: 'functions', json: false });
  });

  test('an option may carry its value after a space or an equals sign', () => {
    const request = { command: 'calc', formula: '=1in', units: 'mm', currency: 'EUR', json: false };
    expect(requestOf('calc', '=1in', '--units', 'mm', '--currency=EUR')).toEqual(request);
  });

  test('a formula may begin with a minus, and anything may stand after two dashes', () => {
    expect(requestOf('calc', '-1in + 3in')).toMatchObject({ formula: '-1in + 3in' });
    expect(requestOf('calc', '--', '-size')).toMatchObject({ formula: '-size' });
    expect(requestOf('estimate', '--', '--json')).toMatchObject({ file: '--json', json: false });
  });

  test('help and version are found first', () => {
    expect(requestOf('--help')).toEqual({ command: 'help', of: undefined });
    expect(requestOf('help', 'calc')).toEqual({ command: 'help', of: 'calc' });
    expect(requestOf('estimate', '--help')).toEqual({ command: 'help', of: 'estimate' });
    expect(requestOf('--version')).toEqual({ command: 'version' });
  });

  test('a wrong call says what is wrong', () => {
    expect(faultOf()).toBe('Say what to do.');
    expect(faultOf('toString')).toBe('There is no command toString.');
    expect(faultOf('estimate')).toBe('estimate needs a job file.');
    expect(faultOf('estimate', 'a', 'b')).toBe(
      'estimate takes one job file, not 2; put quotes around it if it has spaces.',
    );
    expect(faultOf('functions', 'SUM')).toBe('functions takes no word such as SUM.');
    expect(faultOf('estimate', 'a', '--csv')).toBe('estimate has no option --csv.');
    expect(faultOf('calc', '=1', '--units')).toBe('--units needs a value after it.');
    expect(faultOf('calc', '=1', '--units', 'cm')).toBe('--units is in or mm, not cm.');
    expect(faultOf('calc', '=1', '--currency', 'usd')).toBe(
      '--currency is a code such as USD, not usd.',
    );
  });
});
