/** Values of options as people type them: numbers, lists, vectors, pairs of cylinders. Each refusal names its option. */
import type { Vec3 } from '../../shared/vec3';
import { UnusableInput } from './io';

export function numberArgument(option: string, text: string): number {
  const value = Number(text);
  if (text.trim() !== '' && Number.isFinite(value)) return value;
  throw new UnusableInput(`${option}: found "${text}"; allowed: a number, with a point as the decimal mark`);
}

export function wholeArgument(option: string, text: string, least: number, most: number): number {
  const value = Number(text);
  if (/^\d+$/.test(text.trim()) && value >= least && value <= most) return value;
  throw new UnusableInput(`${option}: found "${text}"; allowed: a whole number from ${least} to ${most}`);
}

/** Cylinder numbers with `-` between them, as firing orders are written: `1-3-4-2`. */
export function cylindersArgument(option: string, text: string): number[] {
  if (/^\d{1,3}(-\d{1,3})*$/.test(text.trim())) return text.trim().split('-').map(Number);
  throw new UnusableInput(`${option}: found "${text}"; allowed: cylinder numbers such as 1-3-4-2`);
}

/** Two numbers with `-` between them, the lower first: `1500-7000`. */
export function rangeArgument(option: string, text: string): [number, number] {
  const [low, high, ...more] = text.split('-').map((part) => Number(part.trim() || Number.NaN));
  if (low! < high! && more.length === 0) return [low!, high!];
  throw new UnusableInput(`${option}: found "${text}"; allowed: the lower and the higher, such as 1500-7000`);
}

/** Lists of cylinders with `/` between them: `1-3-5-7/2-4-6-8`. */
export const cylinderListsArgument = (option: string, text: string): number[][] =>
  text.split('/').map((part) => cylindersArgument(option, part));

export function vectorArgument(option: string, text: string): Vec3 {
  const parts = text.split(',').map((part) => numberArgument(option, part));
  if (parts.length !== 3)
    throw new UnusableInput(`${option}: found "${text}"; allowed: three numbers such as 0,-120,0`);
  return [parts[0]!, parts[1]!, parts[2]!];
}

/** Three places with `;` between them. */
export function threePointsArgument(option: string, text: string): [Vec3, Vec3, Vec3] {
  const points = text.split(';').map((part) => vectorArgument(option, part));
  if (points.length !== 3)
    throw new UnusableInput(`${option}: found ${points.length} points; allowed: three such as "0,0,0;100,0,0;0,80,0"`);
  return [points[0]!, points[1]!, points[2]!];
}

/** Two corners of a box as six numbers. */
export function boxArgument(option: string, text: string): [Vec3, Vec3] {
  const n = text.split(',').map((part) => numberArgument(option, part));
  if (n.length !== 6)
    throw new UnusableInput(`${option}: found "${text}"; allowed: six numbers such as -100,-50,0,300,200,150`);
  return [
    [n[0]!, n[1]!, n[2]!],
    [n[3]!, n[4]!, n[5]!],
  ];
}

/** `OLD=NEW` pairs with commas between them. */
export function pairsArgument(option: string, text: string): [string, string][] {
  return text.split(',').map((part) => {
    const [from, to, ...more] = part.split('=');
    if (from && to && more.length === 0) return [from.trim(), to.trim()];
    throw new UnusableInput(`${option}: found "${part}"; allowed: pairs such as 1=2,3=4`);
  });
}
