import { describe, expect, test } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { testWorld } from '../helpers/test-world.ts';

function ran(args: readonly string[], files: Readonly<Record<string, string>> = {}) {
  const world = testWorld(files);
  const code = run(args, world);
  return { code, ...world.written(), text: String(world.files.get('trial.paneljob') ?? '') };
}

const out = ['-o', 'trial.paneljob'];

describe('run templates', () => {
  test('lists each built-in template with its questions, what they offer and their limits', () => {
    const { code, out: told } = ran(['templates']);
    expect(code).toBe(0);
    expect(told).toContain('door_pair: Door pair.');
    expect(told).toContain('  panel_length = 26 in (from 18 in to 40 in): Panel: along the car');
    expect(told).toContain('  tweeter = yes (yes, no): Tweeter in the panel');
  });

  test('tells programs the same', () => {
    const answer = JSON.parse(ran(['templates', '--json']).out) as {
      readonly templates: readonly { readonly template: string }[];
    };
    expect(answer.templates.map(({ template }) => template)).toEqual([
      'door_pair',
      'kick_panels',
      'rear_deck_pods',
      'rear_quarter_pair',
      're_cover',
    ]);
  });
});

describe('run new', () => {
  test('writes a job with the answers in their cells, which estimates without a problem', () => {
    const set = ['--set', 'length=24in', '--set=height=18 in', '--title', 'Van door'];
    const { code, out: told, err, text } = ran(['new', '--template', 're_cover', ...set, ...out]);
    expect({ code, told, err }).toEqual({ code: 0, told: 'trial.paneljob\n', err: '' });
    expect(text).toContain('title = "Van door"');
    expect(text).toContain('value = "24 in"');
    expect(text).toContain('value = "18 in"');
    expect(text).not.toContain('[[ask]]');
  });

  test('a template of one’s own is read from its file', () => {
    const shelf = ran(['new', '--template', 're_cover', ...out]).text;
    const { code, text } = ran(['new', '--template', 'shelf.paneltemplate', ...out], {
      'shelf.paneltemplate': shelf,
    });
    expect(code).toBe(0);
    expect(text).toContain('template = "re_cover"');
  });

  test('what is wrong is said, and nothing is written', () => {
    const told = (...args: readonly string[]) => ran(['new', ...args]);
    expect(told('--template', 're_cover', '--set', 'length=2in', ...out)).toMatchObject({
      code: 1,
      err: 'panelwright: Face: along the car: 2 in is below the least, 6 in.\n',
      text: '',
    });
    expect(told('--template', 're_cover', '--set', 'depth=2in', ...out).err).toContain(
      'asks nothing called “depth”',
    );
    expect(told('--template', 'roof', ...out).err).toContain('There is no template roof');
    expect(told(...out).err).toContain('new needs --template');
    expect(told('--template', 're_cover').err).toContain('new needs -o');
    expect(told('--template', 're_cover', '--set', 'length', ...out).err).toContain('name=answer');
    const there = ran(['new', '--template', 're_cover', ...out], { 'trial.paneljob': '' });
    expect(there.err).toContain('is there already');
  });
});
