/** Ports and inlets that face the same way, nearer together than two bend radii: nothing but a bend past 180° leads back. mm. */
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';

export const RADIUS = 60;

/** @param apart between where a runner starts and where it ends, across its direction */
export function opposed(runners: number, apart: number, maxBendAngle: number, maxBends: number): Design {
  const numbers = Array.from({ length: runners }, (_, i) => i + 1);
  const x = (i: number): number => (i - 1) * 120;
  return parseDesign(
    JSON.stringify({
      format: 'evenrun-design',
      version: 1,
      title: 'Opposed ends',
      ports: numbers.map((i) => ({
        id: `p${i}`,
        cylinder: i,
        position: [x(i), 0, 0],
        direction: [0, 1, 0],
        up: [0, 0, 1],
        opening: { shape: 'round', diameter: 34 },
      })),
      tubes: { primary: { outsideDiameter: 38, wall: 1.5, material: 'stainless-304' } },
      tooling: {
        primary: {
          making: 'bent',
          centerlineRadius: RADIUS,
          firstStraight: 20,
          betweenStraight: 25,
          lastStraight: 20,
          maxBendAngle,
          maxBends,
        },
      },
      merges: numbers.map((i) => ({
        id: `m${i}`,
        inlets: 1,
        position: [x(i), 0, -apart],
        axis: [0, -1, 0],
        up: [0, 0, 1],
        outletDiameter: 38,
        length: 60,
      })),
      runners: numbers.map((i) => ({
        id: `r${i}`,
        tube: 'primary',
        group: 'primaries',
        from: { port: `p${i}` },
        to: { merge: `m${i}` },
      })),
      groups: { primaries: { length: null, tolerance: 1 } },
      clearance: { tubeToTube: 3 },
    }),
  );
}
