/** Random damage to good documents, seeded: whatever happens, it is a DesignError of one line or an accepted document. */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DesignError, parseDesign, validateDesign } from '../../../shared/design/parse';

const good = readFileSync(new URL('../../documents/v1/every-field.evenrun.json', import.meta.url), 'utf8');

function refusedOrAccepted(act: () => unknown): 'refused' | 'accepted' {
  try {
    act();
    return 'accepted';
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    const { message, problems } = error as DesignError;
    expect(message).not.toMatch(/[\r\n\u2028\u2029]/);
    expect(message.length).toBeLessThan(600);
    expect(problems.length).toBeGreaterThan(0);
    return 'refused';
  }
}

/** Every place in a value, as its holder and key. */
function places(value: unknown, found: { holder: Record<string, unknown>; key: string }[] = []): typeof found {
  if (value === null || typeof value !== 'object') return found;
  for (const key of Object.keys(value)) {
    const holder = value as Record<string, unknown>;
    found.push({ holder, key });
    places(holder[key], found);
  }
  return found;
}

const junk = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    undefined,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    -0,
    0,
    -1,
    1e-12,
    1e300,
    '',
    '__proto__',
    'p1',
    'm1',
    [],
    {},
    [0, 0, 0],
  ),
  fc.anything(),
  fc.double(),
  fc.string(),
);

test('values replaced, removed or doubled at random, seed 1871', () => {
  const outcomes = { refused: 0, accepted: 0 };
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(), fc.constantFrom('replace', 'remove', 'double'), junk), {
        minLength: 1,
        maxLength: 3,
      }),
      (damage) => {
        const design: unknown = JSON.parse(good);
        for (const [where, how, value] of damage) {
          const all = places(design);
          const { holder, key } = all[where % all.length]!;
          if (how === 'replace') holder[key] = value;
          else if (how === 'remove') delete holder[key];
          else if (Array.isArray(holder[key])) (holder[key] as unknown[]).push((holder[key] as unknown[])[0]);
        }
        outcomes[refusedOrAccepted(() => validateDesign(design))]++;
      },
    ),
    { seed: 1871, numRuns: 1500 },
  );
  // Both must occur, or the damage tests nothing.
  expect(outcomes.refused).toBeGreaterThan(300);
  expect(outcomes.accepted).toBeGreaterThan(20);
});

test('text cut, overwritten and spliced at random, seed 1872', () => {
  const outcomes = { refused: 0, accepted: 0 };
  fc.assert(
    fc.property(fc.nat(good.length), fc.nat(40), fc.string({ maxLength: 6 }), (at, cut, insert) => {
      const text = good.slice(0, at) + insert + good.slice(at + cut);
      outcomes[refusedOrAccepted(() => parseDesign(text))]++;
    }),
    { seed: 1872, numRuns: 1500 },
  );
  expect(outcomes.refused).toBeGreaterThan(300);
});

test('anything at all, seed 1873', () => {
  fc.assert(
    fc.property(fc.anything({ withDate: true, withMap: true, withNullPrototype: true, withBigInt: true }), (value) => {
      expect(refusedOrAccepted(() => validateDesign(value))).toBe('refused');
    }),
    { seed: 1873, numRuns: 500 },
  );
});
