/** The cases of the transition's tests, and an independent measure of a section. mm. */
import type { Section } from '../../../geometry/transition/section';
import type { Design, Flange, Opening, Transition } from '../../../shared/design/types';
import { oneRunner } from '../../shop/designs';

/** How far outside the outline a point lies; negative inside. The distance to a rectangle with round corners. */
export function outsideOf({ width, height, corner }: Section, x: number, y: number): number {
  const dx = Math.abs(x) - (width / 2 - corner);
  const dy = Math.abs(y) - (height / 2 - corner);
  return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - corner;
}

export type Case = {
  readonly name: string;
  readonly opening: Opening;
  readonly outsideDiameter: number;
  readonly wall: number;
  readonly bore: number;
};

const of = (name: string, opening: Opening, outsideDiameter: number, wall: number): Case => ({
  name,
  opening,
  outsideDiameter,
  wall,
  bore: outsideDiameter - 2 * wall,
});

export const ROUND = of('round 36 to 39.4', { shape: 'round', diameter: 36 }, 42.4, 1.5);
export const RECTANGLE = of(
  'rounded rectangle 36 × 42, corners 11, to 41.15',
  { shape: 'rounded-rectangle', width: 36, height: 42, corner: 11 },
  44.45,
  1.65,
);
export const OVAL = of('oval 38 × 31 to 35.1', { shape: 'oval', width: 38, height: 31 }, 38.1, 1.5);
export const TALL = of('oval 30 × 44 to 39.4', { shape: 'oval', width: 30, height: 44 }, 42.4, 1.5);
export const SHARP = of(
  'sharp rectangle 34 × 38 to 39.4',
  { shape: 'rounded-rectangle', width: 34, height: 38, corner: 0 },
  42.4,
  1.5,
);
export const CASES = [ROUND, RECTANGLE, OVAL, TALL, SHARP];

/** The runner goes straight for 60 mm, then turns down. */
export function designOf(
  { opening, outsideDiameter, wall }: Case,
  transition: Transition | undefined,
  flange?: Partial<Flange>,
): Design {
  const design = oneRunner(
    {
      points: [
        [0, 0, 0],
        [0, 120, 0],
        [0, 120, -300],
      ],
    },
    { tube: { outsideDiameter, wall } },
  );
  return {
    ...design,
    ports: [{ ...design.ports[0]!, opening, ...(transition && { transition }) }],
    ...(flange && { flanges: [{ id: 'f1', ports: ['p1'], thickness: 10, ...flange }] }),
  };
}
