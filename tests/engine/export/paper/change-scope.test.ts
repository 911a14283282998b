import { describe, expect, test } from 'vitest';
import { openSession } from '../../../../extension/engine/index.ts';
import {
  changedBeside,
  changedScope,
  type OrderCopy,
} from '../../../../extension/engine/export/paper/change-scope.ts';
import { compareJobs } from '../../../../extension/engine/sharing/compare.ts';
import { row, task } from '../../../helpers/priced-job.ts';

const head = 'format = 1\n\n[job]\ntitle = "Test"\n\nunits = "in"\ncurrency = "USD"\n\n';
const base = row('part', 'base', {
  name: 'Base panel',
  kind: 'base',
  material: 'hardboard_6',
  shape: 'rect(24 in, 12 in)',
});
const panel = row('panel', 'door', { name: 'Front door', hands: 'pair' });
const gloves = row('part', 'gloves', { name: 'Gloves', kind: 'consumable', qty: '2' });
const job = head + panel + base + gloves + task('work', '60 min', { name: 'Sanding' });

function job2(after: string) {
  const compared = compareJobs(job, after);
  if (!compared.ok) throw new Error(compared.problem.message);
  const [was, now] = [openSession(job).snapshot(), openSession(after).snapshot()];
  return { before: was, after: now, compared: compared.value };
}

function scope(after: string, copy: OrderCopy = 'client'): readonly string[] {
  return changedScope(job2(after), copy);
}

describe('changedScope', () => {
  test('materials and shapes are told by name and in words', () => {
    expect(scope(job.replace('hardboard_6', 'panelboard_3'))).toEqual([
      'Base panel: material Waterproof panel board, 1/8 in, was Hardboard, tempered, 1/4 in.',
    ]);
    expect(scope(job.replace('rect(24 in', 'rect(25 in'))).toEqual([
      'Base panel: shape 25 in × 12 in, was 24 in × 12 in.',
    ]);
  });

  test('a part by another name, one that went, and a panel for one side', () => {
    expect(scope(job.replace('Base panel', 'Backing'))).toEqual([
      'Backing in place of Base panel.',
    ]);
    expect(scope(job.replace(base, ''))).toEqual([
      'Left out: Base panel, Hardboard, tempered, 1/4 in.',
    ]);
    expect(scope(job.replace("'pair'", "'left'"))).toEqual([
      'Front door: sides made: left, was pair.',
    ]);
  });

  test('supplies and work are the shop’s business', () => {
    const after = job.replace("qty = '2'", "qty = '3'").replace('60 min', '90 min');
    expect(scope(after)).toEqual([]);
    expect(scope(after, 'shop')).toEqual([
      'Gloves: pieces 3, was 2.',
      'Sanding: time 1 h 30 min, was 1 h.',
    ]);
  });

  test('what the job says of its scope is told whole', () => {
    const after = job.replace('title = "Test"\n', 'title = "Test"\nscope = "Doors only"\n');
    expect(scope(after)).toEqual(['What is done: Doors only.']);
  });
});

describe('changedBeside', () => {
  test('a client is told that small things change along', () => {
    expect(changedBeside(job2(job.replace('60 min', '90 min')), 'client')).toBe(true);
    expect(changedBeside(job2(job.replace("'pair'", "'left'")), 'client')).toBe(false);
  });
});
