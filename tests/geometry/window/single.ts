/** One runner between two ends, for windows that can be worked out by hand. */
import type { Design, Surrounding, Tooling } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';

const TOOLING: Tooling = {
  centerlineRadius: 60,
  firstStraight: 20,
  betweenStraight: 20,
  lastStraight: 20,
  maxBendAngle: 170,
  maxBends: 4,
};

/** One runner from the origin along +Y to `end`, arriving along `axis`. */
export function designOf(
  end: Vec3,
  axis: Vec3,
  tooling: Partial<Tooling> = {},
  surroundings: Surrounding[] = [],
): Design {
  return {
    format: 'evenrun-design',
    version: 1,
    ports: [
      {
        id: 'p',
        cylinder: 1,
        position: [0, 0, 0],
        direction: [0, 1, 0],
        up: [0, 0, 1],
        opening: { shape: 'round', diameter: 36 },
      },
    ],
    tubes: { t: { outsideDiameter: 40, wall: 1.5 } },
    tooling: { t: { ...TOOLING, ...tooling } },
    merges: [
      { id: 'm', inlets: 1, pattern: 'ring', position: end, axis, up: [1, 0, 0], outletDiameter: 50, length: 80 },
    ],
    runners: [{ id: 'r', tube: 't', group: 'g', from: { port: 'p' }, to: { merge: 'm', inlet: 1 } }],
    groups: { g: { length: null, tolerance: 1 } },
    surroundings,
  };
}
