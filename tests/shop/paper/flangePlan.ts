/** A flange of four ports in steps, eight holes, one of them of no class: of nobody's engine. mm. */
import { circleLoop, type Loop } from '../../../geometry';
import type { FlangeSheetPlan } from '../../../src/shop/flangeSheet';

/** Straight between two half circles. */
const slot = (from: number, to: number, radius: number): Loop => [
  [from, -radius, 0],
  [to, -radius, 1],
  [to, radius, 0],
  [from, radius, 1],
];

const PORTS = [0, 1, 2, 3].map((i) => [15 + 100 * i, i % 2 ? 3 : -3] as const);

export const PLAN: FlangeSheetPlan = {
  id: 'left',
  outline: slot(0, 330, 42),
  openings: PORTS.map((at, i) => ({ loop: circleLoop(at, 17.5), label: `port p${i + 1}` })),
  steps: PORTS.map((at, i) => ({ loop: circleLoop(at, 21.4), depth: 4, label: `port p${i + 1}` })),
  holes: [-22, 52, 66, 150, 166, 250, 266, 345].map((x, i) => ({
    at: [x, i % 2 ? 28 : -28],
    diameter: i === 3 ? 9.4 : 9,
    thread: 'M8x1.25',
  })),
  thickness: 10,
  material: 'mild steel',
  seen: 'outer face, toward the tubes',
  notes: [
    'Openings match the ports; each step takes its tube.',
    'Bolt down to the head or a thick plate while welding, let it cool there, then face flat.',
  ],
};
