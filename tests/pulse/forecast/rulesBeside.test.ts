/** A size among the rules of thumb: within what they differ by at the tuned speed, or beyond all of them. mm, rpm. */
import { expect, test } from 'vitest';
import { tunedSpeed } from '../../../shared/engine/sizing/tunedSpeed';
import { rulesOnMap } from '../../../src/pulse/forecast/rules';
import { rulesBeside } from '../../../src/pulse/forecast/rulesBeside';
import { designIn, FOUR } from './fakes';

const design = designIn(FOUR);
const BAND = [4000, 7000] as const;
const size = (length: number, bore: number) =>
  ({ arrangement: 'all-into-one', length, outsideDiameter: bore + 3, wall: 1.5, outlet: null }) as const;
const sized = (length: number, bore: number, ...alike: readonly ReturnType<typeof size>[]) =>
  rulesBeside(design, BAND, 'all-into-one', [size(length, bore), ...alike]);

test('least and greatest are what the rules ask for at one speed, the nearest to the tuned one', () => {
  const { best } = sized(700, 40);
  const step = (BAND[1] - BAND[0]) / 8;
  expect(Math.abs(best!.rpm - tunedSpeed(BAND))).toBeLessThanOrEqual(step / 2);
  // Asked at that speed alone, every rule has one length.
  const alone = rulesOnMap(design, [best!.rpm, best!.rpm], 'all-into-one').filter(({ kind }) => kind === 'length');
  expect(best!.length!.from).toBeCloseTo(Math.min(...alone.map(({ from }) => from)), 9);
  expect(best!.length!.to).toBeCloseTo(Math.max(...alone.map(({ to }) => to)), 9);
});

test('a size lies within, below or above, its length and its bore each by itself', () => {
  const { from, to } = sized(700, 40).best!.length!;
  const bores = sized(700, 40).best!.bore!;
  expect(from).toBeLessThan(to);
  expect(bores.from).toBeLessThan(bores.to);
  const lies = (length: number, bore: number) => {
    const { best } = sized(length, bore);
    return [best!.length!.lies, best!.bore!.lies];
  };
  expect(lies(from + 1, bores.to + 1)).toEqual(['within', 'above']);
  expect(lies(from - 1, (bores.from + bores.to) / 2)).toEqual(['below', 'within']);
  expect(lies(to + 1, bores.from - 1)).toEqual(['above', 'below']);
});

test('what is but a bound does not widen what they differ by', () => {
  const { asked, best } = sized(700, 40);
  const bounds = asked.filter(({ bearing, kind }) => bearing !== 'size' && kind === 'bore');
  expect(bounds.map(({ name }) => name)).toContain('Port and an eighth');
  const others = asked.filter(({ bearing }) => bearing === 'size').flatMap(({ along }) => along);
  const bores = others.flatMap(({ rpm, bore }) => (rpm === best!.rpm && bore !== null ? [bore] : []));
  expect([best!.bore!.from, best!.bore!.to]).toEqual([Math.min(...bores), Math.max(...bores)]);
});

test('an engine that the formulas refuse is told why, and stops nothing', () => {
  const { bore: _, stroke: __, ...engine } = design.engine!;
  const found = rulesBeside({ ...design, engine }, BAND, 'all-into-one', []);
  expect([found.asked, found.best]).toEqual([[], null]);
  expect(found.why).toMatch(/^engine\/bore: found nothing/);
});

test('sizes that cannot be told apart from the best speak for the rules where these lie among them', () => {
  const { from, to } = sized(700, 40).best!.length!;
  expect(sized(from - 1, 40).best!.length).toMatchObject({ alike: [from - 1, from - 1], agrees: false });
  expect(sized(from - 9, 40, size(from - 1, 40)).best!.length!.agrees).toBe(false);
  const around = sized(from - 9, 40, size(to + 9, 40)).best!.length;
  expect(around).toMatchObject({ is: from - 9, lies: 'below', alike: [from - 9, to + 9], agrees: true });
});
