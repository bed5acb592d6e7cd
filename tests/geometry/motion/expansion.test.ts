/** Growth by heat against the worked example of the published values, and the table's own rules. */
import { describe, expect, test } from 'vitest';
import { expansion, growth, motionOf } from '../../../geometry';
import { MATERIALS } from '../../../shared/stock/materials';
import { loadLayout } from '../../layouts/load';

describe('growth by heat', () => {
  test('304, 600 mm from 20 °C to 650 °C: 7.0686 mm (recomputed from the printed mean of 18.7e-6)', () => {
    const { mean, isRead } = expansion('stainless-304', 650)!;
    expect(growth(600, mean, 20, 650)).toBeCloseTo(7.0686, 4);
    expect(isRead).toBe(true);
  });
  test('the printed means, and halfway between two of them', () => {
    expect(expansion('stainless-304', 315)!.mean).toBeCloseTo(17.8e-6, 12);
    expect(expansion('stainless-304', 538)!.mean).toBeCloseTo(18.4e-6, 12);
    expect(expansion('stainless-304', (315 + 538) / 2)!.mean).toBeCloseTo(18.1e-6, 12);
    expect(expansion('mild-steel', 60)!.mean).toBeCloseTo(12.2e-6, 12);
  });
  test('what is from memory says so', () => {
    expect(expansion('mild-steel', 100)!.isRead).toBe(true);
    expect(expansion('mild-steel', 200)!.isRead).toBe(false);
    expect(expansion('titanium-2', 500)!.isRead).toBe(false);
  });
  test.each(MATERIALS.map((m) => m.id))('%s grows more the hotter it is', (id) => {
    const means = [100, 200, 350, 500, 640].map((t) => expansion(id, t)!.mean);
    expect(means).toEqual([...means].sort((a, b) => a - b));
  });
  test('an unknown material is not guessed', () => expect(expansion('unobtainable', 300)).toBeUndefined());
});

describe('what moves', () => {
  const { design } = loadLayout('known', 'c4-v8-bank-shaft');
  test('nothing, where the design says nothing or names a motion of nothing', () => {
    expect(motionOf(design)).toBeNull();
    const rock = { position: [0, 0, 0], axis: [1, 0, 0], angles: [0, 0] } as const;
    expect(motionOf({ ...design, motion: { rock, heat: { temperature: 20 } } })).toBeNull();
  });
  test('an engine that rolls to one side only stands at rest too', () => {
    const rolls = (angles: readonly [number, number]) =>
      motionOf({ ...design, motion: { rock: { position: [0, 0, 0], axis: [1, 0, 0], angles } } })!.rock!;
    const degree = Math.PI / 180;
    expect(rolls([1, 3])).toMatchObject({ low: 0, high: 3 * degree });
    expect(rolls([-3, -1])).toMatchObject({ low: -3 * degree, high: 0 });
  });
  test('heat from another temperature than that of the room', () => {
    expect(motionOf({ ...design, motion: { heat: { temperature: 600, from: 0 } } })!.heat!.rise).toBe(600);
  });
});
