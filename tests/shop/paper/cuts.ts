/** Cuts of every kind that paper is tried on: a mitre, saddles square, leaning and off centre, small and large. */
import { mitreCut, saddleCut, segmentedBend, type WrapCut } from '../../../geometry';

const RADIANS = Math.PI / 180;
const { cutAngle } = segmentedBend(50.8, 76.2, Math.PI / 2, 4);

export const MITRE = mitreCut({
  id: 'bend piece 2',
  title: 'Segmented bend, piece 2',
  outsideDiameter: 50.8,
  wall: 1.65,
  cutAngle,
});

const saddle = (id: string, outsideDiameter: number, headerRadius: number, angle: number, more = {}): WrapCut =>
  saddleCut({ id, title: `Saddle ${id}`, outsideDiameter, wall: 1.65, headerRadius, angle: angle * RADIANS, ...more });

export const CUTS: readonly WrapCut[] = [
  MITRE,
  saddle('square', 42.4, 30.15, 90),
  saddle('equal', 50.8, 25.4, 90),
  saddle('bore', 60.3, 38.1, 90, { measuredOn: 'bore' }),
  saddle('leaning', 44.45, 31.75, 30),
  saddle('large', 101.6, 63.5, 45, { offset: 8 }),
  saddle('boss', 22, 21.2, 90),
  saddle('near the end', 42.4, 30.15, 60, { leastHeight: 4 }),
  saddle('far from the end', 42.4, 30.15, 60, { leastHeight: 260 }),
];

export const STAMP = { design: 'Four into one', hash: '0123456789abcdef'.repeat(4) };
export const MM = { paperThickness: 0.1, display: 'mm' } as const;
