import { describe, expect, it } from 'vitest';
import { namesItsGround, readTitles, titlesIn } from './titles.ts';

/** Folders in which every test says in square brackets what it rests on; the pages, words and files of other folders are requirements throughout. */
const FOLDERS = ['docs', 'property', 'reference-model', 'reports', 'security', 'sim-core', 'validation', 'weather-io'];

describe('titles of tests [requirement: a test says where its number or rule comes from]', () => {
  it('name their source, "requirement" or another ground, in their own words or their group’s', () => {
    const bare = readTitles(FOLDERS).filter((title) => !namesItsGround(title));
    expect(bare.map(({ path, line, words }) => `${path}:${line} ${words}`)).toEqual([]);
  });

  it('are read as they are: groups, rows, templates [by hand]', () => {
    const text = [
      "describe('a group [Haaland 1983]', () => {",
      "  it('has a test', () => {});",
      '});',
      "describe.skipIf(true)('another', () => {",
      "  it.each([[1, 2]])('row %d', () => {});",
      "  it.each`a | b`('row $a [definition]', () => {});",
      "  expect(it).toBe('no test');",
      '});',
    ].join('\n');
    const titles = titlesIn('sample.test.ts', text);
    expect(titles.map(({ line, words }) => [line, words])).toEqual([
      [2, "'a group [Haaland 1983]' 'has a test'"],
      [5, "'another' 'row %d'"],
      [6, "'another' 'row $a [definition]'"],
    ]);
    expect(titles.map(namesItsGround)).toEqual([true, false, true]);
  });
});
