/** From a problem's path to the part it is about, with continuous bends and points that do not turn counted right. */
import { describe, expect, it } from 'vitest';
import { resolveHeader } from '../../geometry';
import type { Vec3 } from '../../shared/vec3';
import { lights, placeOf, refAtPath, sameRef } from '../../src/app/refs';
import type { Ref } from '../../src/app/session';
import { designWith } from './designs';

/** Point 2 does not turn; points 4 and 5 are one half turn. */
const POINTS: Vec3[] = [
  [0, 0, 0],
  [0, 200, 0],
  [0, 200, -150],
  [0, 200, -300],
  [250, 200, -300],
  [250, 320, -300],
  [100, 320, -300],
];
const header = resolveHeader(designWith(POINTS));
const at = (path: string) => refAtPath(path, header);

describe('paths', () => {
  it.each([
    ['runners/r1', { kind: 'runner', id: 'r1' }],
    ['runners/r1/points/0', { kind: 'runner', id: 'r1' }],
    ['runners/r1/points/1', { kind: 'runner', id: 'r1', bend: 0 }],
    ['runners/r1/points/2', { kind: 'runner', id: 'r1' }],
    ['runners/r1/points/3', { kind: 'runner', id: 'r1', bend: 1 }],
    ['runners/r1/points/4', { kind: 'runner', id: 'r1', bend: 2 }],
    ['runners/r1/points/5', { kind: 'runner', id: 'r1', bend: 2 }],
    ['runners/r1/radii/3', { kind: 'runner', id: 'r1', bend: 2 }],
    ['runners/r1/bends/2', { kind: 'runner', id: 'r1', bend: 2 }],
    ['runners/r1/start', { kind: 'runner', id: 'r1', straight: 0 }],
    ['runners/r1/straights/2', { kind: 'runner', id: 'r1', straight: 2 }],
    ['runners/r1/straights/4', { kind: 'runner', id: 'r1', straight: 3 }],
    ['runners/r1/end', { kind: 'runner', id: 'r1', straight: 3 }],
    ['groups/primaries', { kind: 'group', id: 'primaries' }],
    ['groups/primaries/r1', { kind: 'runner', id: 'r1' }],
    ['merges/m1/position', { kind: 'merge', id: 'm1' }],
    ['flanges/f1', { kind: 'flange', id: 'f1' }],
    ['flanges/f1/fasteners/2', { kind: 'fastener', id: 'f1', index: 2 }],
    ['surroundings/head/file', { kind: 'surrounding', id: 'head' }],
    ['title', null],
    ['document', null],
  ])('%s', (path, ref) => {
    expect(at(path)).toEqual(ref);
  });
});

describe('lighting', () => {
  const runner: Ref = { kind: 'runner', id: 'r1' };
  const bend: Ref = { kind: 'runner', id: 'r1', bend: 1 };

  it('spreads from a runner to its parts, not back and not to others', () => {
    expect(lights(runner, bend)).toBe(true);
    expect(lights(bend, runner)).toBe(false);
    expect(lights(bend, { ...bend, bend: 2 })).toBe(false);
    expect(lights({ kind: 'runner', id: 'r2' }, bend)).toBe(false);
    expect(lights(null, bend)).toBe(false);
  });

  it('tells a bend from a straight of the same number', () => {
    expect(sameRef(bend, { kind: 'runner', id: 'r1', straight: 1 })).toBe(false);
    expect(sameRef(bend, { ...bend })).toBe(true);
  });
});

describe('places', () => {
  it('are on the part', () => {
    expect(placeOf({ kind: 'runner', id: 'r1', bend: 1 }, header)).toEqual([0, 200, -300]);
    expect(placeOf({ kind: 'merge', id: 'm1' }, header)).toEqual([100, 320, -300]);
    expect(placeOf({ kind: 'group', id: 'primaries' }, header)).toBeNull();
    expect(placeOf({ kind: 'runner', id: 'gone' }, header)).toBeNull();
  });
});
