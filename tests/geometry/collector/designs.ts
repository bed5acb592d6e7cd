/** One collector with one runner into it, as many inlets, pattern and lean as asked. */
import { type Header, resolveHeader } from '../../../geometry';
import type { Design, Merge } from '../../../shared/design/types';

export function collectorHeader(change: Partial<Merge> = {}): Header {
  const merge: Merge = {
    id: 'm1',
    inlets: 4,
    pattern: 'ring',
    position: [150, 250, -350],
    axis: [0.1, 0.3, -1],
    up: [1, 0, 0.2],
    pitch: 42.4,
    convergence: 8,
    outletDiameter: 60.3,
    length: 160,
    ...change,
  };
  const design: Design = {
    format: 'evenrun-design',
    version: 1,
    ports: [
      {
        id: 'p1',
        cylinder: 1,
        position: [0, 0, 0],
        direction: [0, 1, 0],
        up: [0, 0, 1],
        opening: { shape: 'round', diameter: 36 },
      },
    ],
    tubes: { primary: { outsideDiameter: 42.4, wall: 1.5, material: 'stainless-304' } },
    tooling: {
      primary: {
        centerlineRadius: 63.6,
        firstStraight: 20,
        betweenStraight: 0,
        lastStraight: 20,
        maxBendAngle: 170,
        maxBends: 4,
      },
    },
    merges: [merge],
    runners: [{ id: 'r1', tube: 'primary', from: { port: 'p1' }, to: { merge: 'm1' } }],
    groups: {},
  };
  return resolveHeader(design);
}

export const PATTERNS = ['ring', 'line'] as const;
export const JOINTS = ['slip', 'band-clamp', 'flange', 'flexible', 'weld'] as const;
