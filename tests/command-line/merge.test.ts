import { describe, expect, test } from 'vitest';
import { readArguments } from '../../extension/command-line/arguments.ts';
import { run } from '../../extension/command-line/run.ts';
import { smallJob, testWorld, type TestWorld } from '../helpers/test-world.ts';

const wider = smallJob.replace('rect(24in, 12in)', 'rect(26in, 12in)');
const narrower = smallJob.replace('rect(24in, 12in)', 'rect(22in, 12in)');
const dearer = smallJob.replace('18.50 USD', '20.00 USD');

const files = {
  'base.paneljob': smallJob,
  'ours.paneljob': wider,
  'theirs.paneljob': dearer,
  'other.paneljob': narrower,
  'broken.paneljob': smallJob.replace('hands = "pair"', 'hands = = pair'),
};

function ran(world: TestWorld, ...args: readonly string[]) {
  const code = run(['merge', ...args], world);
  return { code, ...world.written() };
}

describe('run merge', () => {
  test('writes what both changed and ends with 0, without a word', () => {
    const world = testWorld(files);
    const done = ran(world, 'base.paneljob', 'ours.paneljob', 'theirs.paneljob', '-o', 'out');
    expect(done).toEqual({ code: 0, out: '', err: '' });
    expect(world.files.get('out')).toBe(wider.replace('18.50 USD', '20.00 USD'));
  });

  test('without -o the merged job goes to the output', () => {
    const done = ran(testWorld(files), 'base.paneljob', 'ours.paneljob', 'theirs.paneljob');
    expect(done.out).toBe(wider.replace('18.50 USD', '20.00 USD'));
  });

  test('ends with 1 and names the cell that both changed, with its line', () => {
    const world = testWorld(files);
    const versions = ['base.paneljob', 'ours.paneljob', 'other.paneljob'];
    const done = ran(world, ...versions, '-o', 'out', '--path', 'jobs/shelf.paneljob');
    expect(done.code).toBe(1);
    expect(done.err).toBe(
      `jobs/shelf.paneljob: 1 conflict; open the file in the grid to settle them.
  line 24: part board, shape: was “rect(24in, 12in)”; ours “rect(26in, 12in)”, theirs “rect(22in, 12in)”
`,
    );
    expect(world.files.get('out')).toContain('\n<<<<<<< ours\nshape = "rect(26in, 12in)"\n');
  });

  test('markers are as long as git asks for', () => {
    const versions = ['base.paneljob', 'ours.paneljob', 'other.paneljob'];
    const { out } = ran(testWorld(files), ...versions, '--marker-size', '9');
    expect(out).toContain('\n<<<<<<<<< ours\n');
    expect(out).toContain('\n>>>>>>>>> theirs\n');
  });

  test('tells programs the conflicts and the time', () => {
    const versions = ['base.paneljob', 'ours.paneljob', 'other.paneljob', '-o', 'out'];
    const { out } = ran(testWorld(files), ...versions, '--json');
    expect(JSON.parse(out)).toMatchObject({
      format: 1,
      conflicted: true,
      byLines: false,
      milliseconds: 0,
      conflicts: [{ key: 'part/board#0/shape', kind: 'cell', table: 'part', line: 24 }],
    });
  });

  test('a version that cannot be read as a job is left to git, line by line', () => {
    const world = {
      ...testWorld(files),
      git: (args: readonly string[]) =>
        args[0] === 'merge-file' ? { status: 1, out: 'by lines' } : { status: -1, out: '' },
    };
    const done = ran(world, 'base.paneljob', 'ours.paneljob', 'broken.paneljob', '-o', 'out');
    expect(done.code).toBe(1);
    expect(done.err).toContain('cannot be read as a job; merged line by line, with conflicts');
    expect(world.files.get('out')).toBe('by lines');
    const none = ran(testWorld(files), 'base.paneljob', 'ours.paneljob', 'broken.paneljob');
    expect(none.code).toBe(2);
  });

  test('a file that is not there is named', () => {
    const done = ran(testWorld(files), 'base.paneljob', 'ours.paneljob', 'no.paneljob');
    expect(done).toMatchObject({ code: 2, out: '' });
    expect(done.err).toContain('no.paneljob cannot be read');
  });

  test.each([
    [['a', 'b'], 'merge needs three files'],
    [['a', 'b', 'c', '--marker-size', '3'], '--marker-size is a whole number from 7 up, not 3'],
    [['--set-up', 'a', 'b'], 'merge --set-up takes one folder'],
  ])('called with %s it says: %s', (args, fault) => {
    const asked = readArguments(['merge', ...args]);
    expect(!asked.ok && asked.fault).toContain(fault);
  });
});

describe('run merge --set-up', () => {
  function repository(attributes?: string) {
    const calls: string[] = [];
    const world = testWorld(attributes === undefined ? {} : { '/shop/.gitattributes': attributes });
    return {
      calls,
      world: {
        ...world,
        git: (args: readonly string[]) => {
          calls.push(args.join(' '));
          return { status: 0, out: args[0] === 'rev-parse' ? '/shop\n' : '' };
        },
      },
    };
  }

  test('says first what it would write, and writes nothing', () => {
    const { world, calls } = repository();
    const { code, out } = ran(world, '--set-up', 'jobs');
    expect(code).toBe(0);
    expect(out).toContain('*.paneljob merge=panelwright');
    expect(out).toContain('--yes');
    expect(calls).toEqual(['rev-parse --show-toplevel']);
    expect(world.files.size).toBe(0);
  });

  test('with --yes it writes git’s settings and .gitattributes', () => {
    const { world, calls } = repository('*.png binary');
    expect(ran(world, '--set-up', '--yes').code).toBe(0);
    expect(calls.slice(1)).toEqual([
      'config merge.panelwright.name Panelwright, cell by cell',
      'config merge.panelwright.driver node "/programs/merge-driver.cjs" %O %A %B -o %A --marker-size %L --path %P',
    ]);
    expect(world.files.get('/shop/.gitattributes')).toBe(
      '*.png binary\n*.paneljob merge=panelwright\n*.panelbook merge=panelwright\n',
    );
  });

  test('without git it says what is missing', () => {
    const done = ran(testWorld(), '--set-up', '--yes');
    expect(done.code).toBe(2);
    expect(done.err).toContain('git was not found');
  });
});
