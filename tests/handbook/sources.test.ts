import { describe, expect, test } from 'vitest';
import { catalogue } from '../../extension/engine/index.ts';
import { filesBelow, sourceText } from '../helpers/source-files.ts';

const page = sourceText('docs/sources.md');
const checks = filesBelow('tests/handbook')
  .filter((path) => path.endsWith('.test.ts'))
  .map(sourceText);

const site = /\b[a-z0-9-]+(?:\.[a-z0-9-]+)*\.(?:com|net|org|ca|cc|info|tr|uk|au)(?:\.cn)?\b/g;

function sitesOf(texts: readonly string[]): readonly string[] {
  return [...new Set(texts.flatMap((text) => text.match(site) ?? []))].sort();
}

const named = [
  'East Coast Fibreglass',
  'Essential Surfing',
  'Valspar Composites',
  'Epoxyworks',
  'WOOD magazine',
  'Hi-Strength 90',
  'Fabric Architecture, February 2018',
  'learningCurve',
  'Electroacoustical Reference Data',
  'UK fibreglass guide',
  'System Three',
  'University of Houston',
  'OpenFormula',
];

describe('docs/sources.md', () => {
  test('lists every address that a check names', () => {
    const sites = sitesOf(checks);
    expect(sites.length).toBeGreaterThan(35);
    expect(sites.filter((address) => !page.includes(address))).toEqual([]);
  });

  test('lists every address and publication that a function names', () => {
    const sources = [...catalogue.values()].map(({ source }) => source);
    expect(sitesOf(sources).filter((address) => !page.includes(address))).toEqual([]);
    const used = named.filter((name) => sources.some((source) => source.includes(name)));
    expect(used).toEqual(named);
    expect(named.filter((name) => !page.includes(name))).toEqual([]);
  });

  test('names functions that there are', () => {
    const names = [...page.matchAll(/`([A-Z0-9]+\.[A-Z0-9]+)`/g)].map(([, name = '']) => name);
    expect(names.length).toBeGreaterThan(25);
    expect(names.filter((name) => !catalogue.has(name))).toEqual([]);
  });
});
