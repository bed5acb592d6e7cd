/** The opening of a kind that a port can have which is nearest to a drawn one, and how far the two differ. mm. */
import type { Opening, Port } from '../../shared/design/types';
import { circleLoop, edges, type Loop, loopArea, loopBounds, type Point2, sampleLoop } from '../plane/loop';
import { moveLoop } from '../plane/rigid';
import { distanceToLoop, loopCentre } from '../plane/within';
import { cross, dot, reject, unit } from '../vector';
import type { FlangeFrame } from './flangeFrame';
import { circleOf } from './sortLoops';

/** Corners within this share of half the height are half circles: an oval. */
const NEARLY_HALF = 0.97;
const SAMPLE = 0.02;

/** @param loop in the flange's frame; it is measured across and along the port's own up */
export function fittedOpening(loop: Loop, frame: FlangeFrame, port: Port): { nearest: Opening; stray: number } {
  const own = aboutItsMiddle(loop, frame, port);
  const circle = circleOf(own);
  const { min, max } = loopBounds(own);
  const [width, height] = [max[0] - min[0], max[1] - min[1]];
  const nearest = circle
    ? ({ shape: 'round', diameter: tidy(2 * circle.radius) } as const)
    : ofSize(width, height, loopArea(own));
  const middle: Point2 = circle ? circle.centre : [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  return { nearest, stray: strayBetween(own, openingAt(nearest, middle)) };
}

/** What the corners take away is (4 − π)·r² of the rectangle. */
function ofSize(width: number, height: number, area: number): Opening {
  const most = Math.min(width, height) / 2;
  const corner = Math.min(most, Math.sqrt(Math.max(0, width * height - area) / (4 - Math.PI)));
  if (corner < NEARLY_HALF * most)
    return {
      shape: 'rounded-rectangle',
      width: tidy(width),
      height: tidy(height),
      corner: Math.min(tidy(corner), tidy(width) / 2, tidy(height) / 2),
    };
  if (Math.abs(width - height) < (1 - NEARLY_HALF) * width)
    return { shape: 'round', diameter: tidy((width + height) / 2) };
  return { shape: 'oval', width: tidy(width), height: tidy(height) };
}

/** A hundredth of a mm: finer than any port is made. */
const tidy = (mm: number): number => Math.round(mm * 100) / 100;

function aboutItsMiddle(loop: Loop, { x, y, z }: FlangeFrame, port: Port): Loop {
  const up = unit(reject(port.up, z));
  const across = cross(up, z);
  const turn = -Math.atan2(dot(across, y), dot(across, x));
  const turned = moveLoop(loop, { mirrored: false, turn, shift: [0, 0] });
  const [cx, cy] = loopCentre(turned);
  return moveLoop(turned, { mirrored: false, turn: 0, shift: [-cx, -cy] });
}

const QUARTER = Math.tan(Math.PI / 8);

/** As a loop about a middle. */
export function openingAt(opening: Opening, [cx, cy]: Point2): Loop {
  if (opening.shape === 'round') return circleLoop([cx, cy], opening.diameter / 2);
  const [w, h] = [opening.width / 2, opening.height / 2];
  const r = opening.shape === 'oval' ? Math.min(w, h) : opening.corner;
  const corners: readonly (readonly [number, number, number])[] = [
    [w, -h + r, 0],
    [w, h - r, QUARTER],
    [w - r, h, 0],
    [-w + r, h, QUARTER],
    [-w, h - r, 0],
    [-w, -h + r, QUARTER],
    [-w + r, -h, 0],
    [w - r, -h, QUARTER],
  ];
  const all = corners.map(([x, y, bulge]): Loop[number] => [cx + x, cy + y, bulge]);
  // Where corners meet, the straight between them is none.
  return all.filter(([x, y], k) => {
    const [u, v] = all[(k + 1) % all.length]!;
    return Math.hypot(u - x, v - y) > 1e-9;
  });
}

const strayBetween = (a: Loop, b: Loop): number => Math.max(oneWay(a, b), oneWay(b, a));

function oneWay(from: Loop, to: Loop): number {
  const all = edges(to);
  return sampleLoop(from, SAMPLE).reduce((most, point) => Math.max(most, distanceToLoop(point, all)), 0);
}
