/** Speeds of a band, what is read off a curve against shapes whose answers are known, and a curve that a team follows. */
import { describe, expect, test } from 'vitest';
import { areaUnder, followCurve, followCurves, NOT_FOLLOWED, peakOf, sumUp } from '../../../src/pulse/forecast/curve';
import { canonical, hashOf, hashText } from '../../../src/pulse/forecast/hash';
import { speedsOf } from '../../../src/pulse/forecast/speeds';
import { subjectOf } from '../../../src/pulse/forecast/subject';
import { answerAt, designIn, FOUR, fakeTeam, inventedTorque } from './fakes';

describe('speeds', () => {
  test('evenly over the band, to 50 rpm, both ends among them', () => {
    const speeds = speedsOf([2000, 7600]);
    expect(speeds).toEqual([2000, 2500, 3000, 3550, 4050, 4550, 5050, 5550, 6050, 6600, 7100, 7600]);
    expect(speedsOf([1000, 4000], 4)).toEqual([1000, 2000, 3000, 4000]);
  });

  test('never beyond an end that is no round number', () => {
    const speeds = speedsOf([1010, 6980], 5);
    expect([speeds[0], speeds.at(-1)]).toEqual([1010, 6980]);
  });

  test('in a narrow band at whole rpm, none twice', () => {
    expect(speedsOf([3000, 3010], 12)).toHaveLength(11);
    expect(speedsOf([3000, 3100], 5)).toEqual([3000, 3025, 3050, 3075, 3100]);
  });
});

describe('sums', () => {
  const parabola = (rpm: number) => 200 - ((rpm - 4321) / 500) ** 2;

  test('the peak of a parabola between uneven speeds is its vertex', () => {
    const peak = peakOf([3000, 4000, 4600, 6000].map((rpm) => [rpm, parabola(rpm)] as const))!;
    expect(peak.rpm).toBeCloseTo(4321, 6);
    expect(peak.value).toBeCloseTo(200, 9);
    expect(peak.atEnd).toBe(false);
  });

  test('a peak at an end is said to be one; of a level curve it is any point', () => {
    const rising = [1000, 2000].map((rpm) => [rpm, rpm] as const);
    expect(peakOf(rising)).toEqual({ rpm: 2000, value: 2000, atEnd: true });
    expect(peakOf([])).toBeNull();
    expect(peakOf([1, 2, 3].map((rpm) => [rpm, 3] as const))!.value).toBe(3);
  });

  test('area within a band that cuts through the segments, by hand', () => {
    const line = [1000, 2000, 3000].map((rpm) => [rpm, Math.min(rpm / 10, 200)] as const);
    expect(areaUnder(line, [1500, 2500])).toBeCloseTo(175 * 500 + 200 * 500, 6);
  });

  test('of a curve over part of the band, with a speed missing and one not settled', () => {
    const rough = answerAt(4000, 140, { settled: false });
    const sum = sumUp([answerAt(2000, 100), { rpm: 3000, failed: 'no' }, rough, answerAt(5000, 120)], [1000, 4500]);
    expect(sum.covered).toEqual([2000, 4500]);
    expect(sum.area).toBeCloseTo(120 * 2000 + 135 * 500, 6);
    expect(sum.mean).toBeCloseTo((120 * 2000 + 135 * 500) / 2500, 9);
    expect([sum.missing, sum.unsettled]).toEqual([[3000], [4000]]);
  });

  test('of nothing answered there is nothing', () => {
    const none = sumUp([{ rpm: 2000, failed: 'no' }], [1000, 3000]);
    expect([none.torque, none.power, none.area, none.mean, none.covered]).toEqual([null, null, null, null, null]);
    expect(none.missing).toEqual([2000]);
  });
});

describe('a curve', () => {
  const subject = subjectOf(designIn(FOUR), 'header');

  test('has its answers in the order of the speeds, whatever the order they are told in', async () => {
    const curve = await followCurve(fakeTeam(), subject, [2000, 3000, 4000], { cell: 0.02 });
    expect(curve.map(({ rpm }) => rpm)).toEqual([2000, 3000, 4000]);
    const { engine, path } = subject;
    expect(curve[1]).toMatchObject({ torque: inventedTorque({ engine, path, rpm: 3000, cell: 0.02 }) });
  });

  test('keeps traces of the speeds asked for alone', async () => {
    const team = fakeTeam();
    await followCurve(team, subject, [2000, 3000], { traced: [3000] });
    expect(team.followed.map(({ keep }) => keep)).toEqual(['traces', undefined]);
  });

  test('stopped, the speeds that were not followed keep their place', async () => {
    let told = 0;
    const how = { tell: () => void told++, stopped: () => told >= 2 };
    const [one, other] = await followCurves(fakeTeam(), [subject, subject], [2000, 3000], how);
    expect(one!.every((point) => 'failed' in point && point.failed === NOT_FOLLOWED)).toBe(true);
    expect(other!.every((point) => !('failed' in point))).toBe(true);
  });
});

describe('hashes', () => {
  test('of FNV-1a, 64 bits: published values of "" and "a"', () => {
    // Source: test vectors of the algorithm's authors (Fowler, Noll, Vo), from memory.
    expect(hashText('')).toBe('cbf29ce484222325');
    expect(hashText('a')).toBe('af63dc4c8601ec8c');
  });

  test('do not follow the order of keys, and do follow every number', () => {
    expect(canonical({ b: [1, { d: 2, c: undefined }], a: null })).toBe('{"a":null,"b":[1,{"d":2}]}');
    expect(hashOf({ a: 1, b: 2 })).toBe(hashOf({ b: 2, a: 1 }));
    expect(hashOf({ a: 1 })).not.toBe(hashOf({ a: 1 + Number.EPSILON }));
  });
});
