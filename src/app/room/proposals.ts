/**
 * What is proposed where the design does not say how the header moves or is wrapped. Common practice, put in only when asked for,
 * and meant to be changed. mm, degrees, °C.
 */
import type { Design, Motion, Wrap } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';

/** An engine in rubber rolls about so far either way. */
const ROLL = 3;
/** The crank lies about so many bores in from the ports, and so many below them. */
const BORES_IN = 2;
const BORES_DOWN = 2;
const BORE = 90;
/** Of primary tubes at full load. */
const HOT = 650;

export const usualWrap: Wrap = { thickness: 1.6, layers: 2, roll: 20 };
export const usualHeat: NonNullable<Motion['heat']> = { temperature: HOT };

/** About an axis along the row of ports, where the crank lies. */
export function usualRock({ ports, engine }: Design): NonNullable<Motion['rock']> {
  const first = ports[0];
  const last = ports.at(-1);
  const bore = engine?.bore ?? BORE;
  const at =
    first && last ? ([0, 1, 2].map((i) => (first.position[i]! + last.position[i]!) / 2) as number[]) : [0, 0, 0];
  const out = first ? [first.direction[0], first.direction[1]] : [0, 1];
  const level = Math.hypot(out[0]!, out[1]!) || 1;
  const position: Vec3 = [
    Math.round(at[0]! - (BORES_IN * bore * out[0]!) / level),
    Math.round(at[1]! - (BORES_IN * bore * out[1]!) / level),
    Math.round(at[2]! - BORES_DOWN * bore),
  ];
  return { position, axis: alongRow(first?.position, last?.position, out), angles: [-ROLL, ROLL] };
}

/** Along the row; of one port, level and square to its way out. */
function alongRow(a: Vec3 | undefined, b: Vec3 | undefined, out: readonly number[]): Vec3 {
  const span = a && b ? [b[0] - a[0], b[1] - a[1], b[2] - a[2]] : [0, 0, 0];
  const size = Math.hypot(...span);
  const tidy = (x: number) => Math.round(1e4 * x) / 1e4 + 0;
  if (size > 0) return [tidy(span[0]! / size), tidy(span[1]! / size), tidy(span[2]! / size)];
  const level = Math.hypot(out[0]!, out[1]!);
  return level > 0 ? [tidy(out[1]! / level), tidy(-out[0]! / level), 0] : [1, 0, 0];
}
