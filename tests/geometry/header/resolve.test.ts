/** Defaults and places worked out from a document, by the contract. */
import { describe, expect, test } from 'vitest';
import { resolveHeader } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { header } from '../check/header';

const mixed = (): Design => {
  const design = header();
  return {
    ...design,
    tubes: { ...design.tubes, wide: { outsideDiameter: 50, wall: 2, material: 'stainless-304' } },
    tooling: { ...design.tooling, wide: { ...design.tooling.primary!, centerlineRadius: 75 } },
    merges: design.merges.map(({ pitch: _, ...m }) => m),
    runners: design.runners.map((r) => (r.id === 'r2' ? { ...r, tube: 'wide' } : r)),
  };
};

describe('a merge', () => {
  test('takes pitch and bundle from its widest tube, wall and material from its first', () => {
    const m = resolveHeader(mixed()).merges.get('m1')!;
    expect(m).toMatchObject({ pitch: 50, bundle: 75, inletOutsideDiameter: 50, wall: 1.5, material: 'mild-steel' });
  });
  test('keeps what it is given', () => {
    const given = header({ merge: { pitch: 61, bundle: 0, wall: 3, material: 'titanium' } });
    expect(resolveHeader(given).merges.get('m1')).toMatchObject({
      pitch: 61,
      bundle: 0,
      wall: 3,
      material: 'titanium',
    });
  });
  test('that nothing enters has a place and a body all the same', () => {
    const design = header();
    const { merges } = resolveHeader({ ...design, runners: [] });
    expect(merges.get('m1')!.inlets).toHaveLength(2);
    expect(merges.get('m1')!.body.startRadius).toBeGreaterThan(0);
  });
});

describe('a runner', () => {
  test('takes each bend’s radius from its tooling, or its own', () => {
    expect(resolveHeader(mixed()).runners.map((r) => r.centerline!.radii)).toEqual([
      [60, 60],
      [75, 75],
    ]);
    const own = resolveHeader(header({ r1: { radii: [50, 55] } }));
    expect(own.runners[0]!.centerline!.radii).toEqual([50, 55]);
  });
  test('from a port starts there with the head’s length; from a merge at its outlet with none', () => {
    const design = header({ port: { lengthInHead: 90 }, merge: { axis: [0, 0, -3] } });
    const after: Design = {
      ...design,
      merges: [...design.merges, { ...design.merges[0]!, id: 'm2', inlets: 1, position: [50, 300, -700] }],
      runners: [...design.runners, { id: 's1', tube: 'primary', from: { merge: 'm1' }, to: { merge: 'm2', inlet: 1 } }],
    };
    const [r1, , s1] = resolveHeader(after).runners;
    expect(r1).toMatchObject({ lengthInHead: 90, start: { position: [0, 0, 0], direction: [0, 1, 0] } });
    expect(s1).toMatchObject({ lengthInHead: 0, start: { position: [50, 300, -320] }, centerline: null });
    expect(s1!.end!.position).toEqual([50, 300, -700]);
  });
  test('without an inlet, or with one that is not there, has no end', () => {
    expect(resolveHeader(header({ r1: { to: { merge: 'm1' } } })).runners[0]!.end).toBeNull();
    expect(resolveHeader(header({ r1: { to: { merge: 'm1', inlet: 3 } } })).runners[0]!.end).toBeNull();
  });
});

test('vectors need not be unit length, and up is made square', () => {
  const { ports } = resolveHeader(header({ port: { direction: [0, 4, 0], up: [0, 3, 8] } }));
  expect(ports.get('p1')!.pose).toMatchObject({ direction: [0, 1, 0], up: [0, 0, 1] });
});
