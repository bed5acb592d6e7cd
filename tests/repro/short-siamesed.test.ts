/**
 * Two short runners side by side, touching all along, each wholly within its port's bundle and for the rest within the
 * collector's. A stretch that lay in both bundles used to count for the collector's only, so that it clashed with a
 * neighbour still in its port's.
 */
import { expect, test } from 'vitest';
import { check } from '../../geometry';
import type { Design } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import { header } from '../geometry/check/header';

function pair(portBundle: number): Design {
  const [length, away] = [100, 40];
  const design = header({
    spacing: away,
    pitch: away,
    tubeToTube: 4,
    port: { bundle: portBundle },
    merge: { position: [50, length, 0], axis: [0, 1, 0], up: [0, 0, 1], bundle: 60 },
  });
  const runners = design.runners.map((r, i) => {
    const x = 50 + (i - 0.5) * away;
    const points: Vec3[] = [
      [x, 0, 0],
      [x, length, 0],
    ];
    // v = axis × up = +X, so inlet 1 is the one at lesser x.
    return { ...r, points };
  });
  return { ...design, runners };
}

test('touching is allowed where both are in a bundle of one kind', () => {
  expect(check(pair(100)).problems.map((p) => p.message)).toEqual([]);
});
test('and not past it', () => {
  expect(check(pair(20)).problems).toMatchObject([{ rule: 'tube-to-tube', allowed: 4 }]);
});
