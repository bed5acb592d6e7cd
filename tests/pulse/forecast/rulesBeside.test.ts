/** A size among the rules of thumb: within what they differ by at the tuned speed, or beyond all of them. mm, rpm. */
import { expect, test } from 'vitest';
import { tunedSpeed } from '../../../shared/engine/sizing/tunedSpeed';
import { rulesOnMap } from '../../../src/pulse/forecast/rules';
import { rulesBeside } from '../../../src/pulse/forecast/rulesBeside';
import { designIn, FOUR } from './fakes';

const design = designIn(FOUR);
const BAND = [4000, 7000] as const;
const sized = (length: number, bore: number) =>
  rulesBeside(design, BAND, 'all-into-one', {
    ...{ arrangement: 'all-into-one', length, wall: 1.5, outlet: null },
    outsideDiameter: bore + 3,
  });

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
  const found = rulesBeside({ ...design, engine }, BAND, 'all-into-one', null);
  expect([found.asked, found.best]).toEqual([[], null]);
  expect(found.why).toMatch(/^engine\/bore: found nothing/);
});
