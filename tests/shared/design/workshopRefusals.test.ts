/** Refusals of the workshop, the bender and splits: a good document, one thing spoilt, and where, what was found and what is allowed. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { DesignError, validateDesign } from '../../../shared/design/parse';

const good = readFileSync(new URL('../../documents/v1/every-field.evenrun.json', import.meta.url), 'utf8');

// biome-ignore lint/suspicious/noExplicitAny: spoiling a document is the point
type Spoil = (design: any) => void;

const spoilings: readonly (readonly [name: string, spoil: Spoil, path: string, found: RegExp, allowed: RegExp])[] = [
  ['a negative bar', (d) => (d.workshop.bars[0].length = -6000), 'workshop/bars/bar 6 m/length', /-6000/, /above 0/],
  [
    'fewer bars than none',
    (d) => (d.workshop.bars[1].count = -1),
    'workshop/bars/offcut/count',
    /-1/,
    /whole number from 0/,
  ],
  ['a negative leg', (d) => (d.workshop.bends[0].legs[0] = -5), 'workshop/bends/J 64/legs/0', /-5/, /from 0/],
  [
    'a shelf name twice',
    (d) => (d.workshop.bends[0].id = 'OFFCUT'),
    'workshop/bends/0/id',
    /again/,
    /no other bar or bend/,
  ],
  ['a kerf beyond a bar', (d) => (d.workshop.kerf = 800), 'workshop/bars/offcut/length', /730/, /kerf, 800 mm/],
  [
    'a stock wall too thick',
    (d) => (d.workshop.bars[0].wall = 22),
    'workshop/bars/bar 6 m/wall',
    /22/,
    /half the outside/,
  ],
  ['a stock bend too tight', (d) => (d.workshop.bends[0].radius = 20), 'workshop/bends/J 64/radius', /20/, /21\.2 mm/],
  ['a thinning rule of no name', (d) => (d.workshop.thinning = 'guess'), 'workshop/thinning', /"guess"/, /"tema"/],
  [
    'a bend that springs forward',
    (d) => (d.tooling.primary.bender.testBends[1] = [90, 92]),
    'tooling/primary/bender/testBends/1',
    /set 90, measured 92/,
    /springs back/,
  ],
  ['a split before the first bend', (d) => (d.runners[0].splits = [1]), 'runners/r1/splits/0', /1/, /from 2/],
  ['a leg longest below nothing', (d) => (d.workshop.longestLeg = -1), 'workshop/longestLeg', /-1/, /from 0/],
];

test.each(spoilings)('%s', (_, spoil, path, found, allowed) => {
  const design: unknown = JSON.parse(good);
  spoil(design);
  let error: unknown;
  try {
    validateDesign(design);
  } catch (caught) {
    error = caught;
  }
  expect(error).toBeInstanceOf(DesignError);
  const { problems } = error as DesignError;
  expect(problems.map((p) => p.path)).toEqual([path]);
  expect(problems[0]!.found).toMatch(found);
  expect(problems[0]!.allowed).toMatch(allowed);
});
