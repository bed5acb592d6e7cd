/**
 * How far a valve lets gas pass, over crank angle: flow coefficient × curtain area π·diameter·lift, for all valves of one side
 * together. Crank degrees of the cylinder's own, −360 to 360 from top dead centre of the exhaust stroke; SI units.
 */
import type { ValveSetup } from './types';

export type ValveLaw = {
  /** m */
  liftAt(angle: number): number;
  /** Effective, m². */
  areaAt(angle: number): number;
  /** The last angle shut and the first one shut again. */
  readonly opens: number;
  readonly closes: number;
};

/** Rows a degree of the table that is read while gas flows: linear between. */
const FINE = 4;

/** @param factor on the flow coefficients */
export function valveLaw({ count, diameter, lifts, flow }: ValveSetup, factor: number): ValveLaw {
  const opens = lifts[0]![0];
  const closes = lifts.at(-1)![0];
  const curve = linear(lifts);
  const coefficient = linear(flow);
  const lift = (angle: number) => Math.max(0, curve(angle));
  const effective = (height: number): number =>
    height > 0 ? factor * coefficient(height / diameter) * count * Math.PI * diameter * height : 0;
  const table = Float64Array.from({ length: 720 * FINE + 1 }, (_, i) => {
    const angle = i / FINE - 360;
    return effective(lift(within(angle, opens)));
  });
  return {
    opens,
    closes,
    liftAt: (angle) => lift(within(angle, opens)),
    areaAt(angle) {
      const place = (angle + 360) * FINE;
      const row = place < 0 ? 0 : place < 720 * FINE ? Math.floor(place) : 720 * FINE - 1;
      const part = place - row;
      return table[row]! * (1 - part) + table[row + 1]! * part;
    },
  };
}

/** The same place of the cycle, from `opens` on: events may lie beyond ±360. */
function within(angle: number, opens: number): number {
  const after = (((angle - opens) % 720) + 720) % 720;
  return opens + after;
}

/** Linear between rows, held beyond the ends. */
function linear(rows: readonly (readonly [number, number])[]): (x: number) => number {
  return (x) => {
    const next = rows.findIndex(([at]) => at > x);
    if (next === 0) return rows[0]![1];
    if (next < 0) return rows.at(-1)![1];
    const [a, from] = rows[next - 1]!;
    const [b, to] = rows[next]!;
    return from + ((to - from) * (x - a)) / (b - a);
  };
}
