/** Usual forms are without problems; slips of the hand are refused by path, with what is allowed. */
import { describe, expect, test } from 'vitest';
import type { EngineForm } from '../../../shared/engine/form';
import { newForm } from '../../../shared/engine/formDefaults';
import { formFields } from '../../../shared/engine/formFields';
import { formProblems } from '../../../shared/engine/formProblems';
import { readForm } from '../../../shared/engine/readForm';
import { USUAL_ENGINES } from '../../../shared/engine/usualEngines';
import { published, quantityOf } from '../../reference/published';

const four = newForm({ cylinders: 4 });
const first = (form: EngineForm): string => {
  const { path, found, allowed } = formProblems(form)[0]!;
  return `${path}: found ${found}; allowed: ${allowed}`;
};

describe.each(
  USUAL_ENGINES.map((e) => [`${e.cylinders} in ${e.banks.length}: ${e.firingOrder.join('-')}`, e] as const),
)('usual engine %s', (_, engine) => {
  test('gives a form without problems, which a file gives back as it is', () => {
    const form = newForm({ cylinders: engine.cylinders, banks: engine.banks });
    expect(formProblems(form)).toEqual([]);
    expect(form.firingOrder).toEqual(engine.firingOrder);
    expect(readForm(JSON.stringify(form))).toEqual(form);
  });
});

test.each(USUAL_ENGINES.flatMap((e) => (e.published ? [[e.published, e.firingOrder.join('-')] as const] : [])))(
  '%s is the order published, %s',
  (key, order) => {
    expect(published(key)).toBeDefined();
    expect(quantityOf(key)).toContain(order);
  },
);

test.each<[string, object, RegExp]>([
  ['no cylinders', { cylinders: 0 }, /^cylinders: found 0; allowed: a whole number from 1 to 12/],
  ['half a cylinder', { cylinders: 4.5 }, /^cylinders: found 4.5; allowed: a whole number/],
  ['no number', { bore: Number.NaN }, /^bore: found NaN; allowed: a number from 20 to 250 mm/],
  ['a cylinder that fires twice', { firingOrder: [1, 3, 4, 3] }, /^firingOrder: found cylinder 3 twice; allowed: each/],
  ['one that never fires', { firingOrder: [1, 3, 4] }, /^firingOrder: found no place where cylinder 2 fires/],
  ['a stranger', { firingOrder: [1, 3, 4, 5] }, /^firingOrder: found cylinder 5/],
  [
    'a bank of fewer',
    { banks: [{ ...four.banks[0]!, cylinders: [1, 2, 3] }] },
    /^banks: found no place where cylinder 4/,
  ],
  [
    'ports nearer than tubes',
    { banks: [{ ...four.banks[0]!, pitch: 45 }] },
    /^banks\/0\/pitch: found 45; allowed: at least/,
  ],
  ['speeds the wrong way round', { rpm: [7000, 2000] }, /^rpm: found 7000 to 2000; allowed: the lower speed first/],
  ['a rod too short', { stroke: 90, rod: 40 }, /^rod: found 40; allowed: more than half the stroke, 45 mm/],
  [
    'a direction along up',
    { banks: [{ ...four.banks[0]!, direction: [0, 0, 1] }] },
    /^banks\/0\/up: found \[0, 0, 1\], along direction/,
  ],
  [
    'a collector on a port',
    { collectors: [{ ...four.collectors[0]!, position: [-138, 30, 0] }] },
    /^collectors\/0\/position: .* from the port of cylinder 1; allowed: at least .* move it out or down/,
  ],
  [
    'a collector in the head',
    { collectors: [{ ...four.collectors[0]!, position: [0, -200, 0] }] },
    /^collectors\/0\/position: .*in the head of bank 1; allowed: a place in front/,
  ],
  [
    'a collector without direction',
    { collectors: [{ ...four.collectors[0]!, axis: [0, 0, 0] }] },
    /^collectors\/0\/axis: .*a vector with a direction/,
  ],
  ['pairs without a tube between', { arrangement: 'pairs-then-one' }, /^secondary: found nothing/],
  [
    'threes of four',
    { arrangement: 'threes-then-one', secondary: four.primary },
    /^collectors\/0\/cylinders: found 4 cylinders; allowed: a multiple of 3, at least 6/,
  ],
])('refused: %s', (_, change, message) => {
  expect(first({ ...four, ...change } as EngineForm)).toMatch(message);
});

test('every number of a form has its meaning and bounds, places and directions aside', () => {
  const valve = { count: 2, diameter: 30, lift: 9, opens: -232, closes: 10 };
  const full = {
    ...newForm({ cylinders: 4, arrangement: 'pairs-then-one' }),
    ...{ bore: 82, stroke: 85, rod: 140, compressionRatio: 10, rpm: [1500, 7000] },
    intakeValve: valve,
    exhaustValve: valve,
  };
  const free = /^(firingOrder|(banks|collectors)\/\d+\/(cylinders|firstPort|direction|up|position|axis))\//;
  const walk = (value: unknown, path: string[]): string[] =>
    typeof value === 'number'
      ? [path.join('/')]
      : value !== null && typeof value === 'object'
        ? Object.entries(value).flatMap(([key, entry]) => walk(entry, [...path, key]))
        : [];
  const without = walk(full, []).filter((path) => !free.test(path) && !formFields(path));
  expect(without).toEqual([]);
});
