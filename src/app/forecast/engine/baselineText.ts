/** A measured curve as people paste it: a speed and a torque a line, in the unit it was written down in. rpm, N m. */
import { MEASURED_SPEED, TORQUE } from '../../../../shared/design/ranges';
import { KGF_M, LB_FT } from '../quantities';

export type TorqueUnit = 'N m' | 'lb ft' | 'kgf m';

/** N m in one of each. */
export const IN_NEWTON_METRES: Readonly<Record<TorqueUnit, number>> = {
  'N m': 1,
  'lb ft': 1 / LB_FT,
  'kgf m': 1 / KGF_M,
};
export const TORQUE_UNITS = Object.keys(IN_NEWTON_METRES) as readonly TorqueUnit[];

export type Measured =
  | { readonly ok: true; readonly points: readonly (readonly [speed: number, torque: number])[] }
  | { readonly ok: false; readonly problem: string };

/** Tenths of a newton metre are finer than any brake. */
const tidy = (torque: number): number => Math.round(torque * 100) / 100;

/** Lines without a number, such as a heading, are passed over; rows may come in any order. */
export function readMeasured(text: string, unit: TorqueUnit): Measured {
  const points: (readonly [number, number])[] = [];
  const lines = new Map<number, number>();
  for (const [k, line] of text.split('\n').entries()) {
    if (!/\d/.test(line) || line.trim().startsWith('#')) continue;
    const parts = partsOf(line);
    const [speed, torque] = parts.map(Number);
    if (parts.length !== 2 || !Number.isFinite(speed) || !Number.isFinite(torque))
      return {
        ok: false,
        problem: `Line ${k + 1}, “${line.trim().slice(0, 40)}”: a speed in rpm and a torque are wanted, such as 3000 142.`,
      };
    const inNewtonMetres = tidy(torque! * IN_NEWTON_METRES[unit]);
    const why = oddWords(speed!, inNewtonMetres, lines.get(speed!));
    if (why) return { ok: false, problem: `Line ${k + 1}, “${line.trim().slice(0, 40)}”: ${why}` };
    lines.set(speed!, k + 1);
    points.push([speed!, inNewtonMetres]);
  }
  if (points.length === 0) return { ok: false, problem: 'A line for each speed is wanted, such as 3000 142.' };
  return { ok: true, points: points.sort((a, b) => a[0] - b[0]) };
}

/** @param earlier the line that has this speed already */
function oddWords(speed: number, torque: number, earlier: number | undefined): string | null {
  const { least, most } = MEASURED_SPEED;
  if (speed < least || speed > most) return `a speed from ${least} to ${most} rpm is wanted.`;
  if (torque <= TORQUE.least) return 'a torque above 0 is wanted.';
  if (torque > TORQUE.most) return `a torque of at most ${TORQUE.most} N m is wanted.`;
  return earlier === undefined ? null : `${speed} rpm stands in line ${earlier} already; leave one of the two.`;
}

/** A mark between thousands, as in 6,000: no engine's speed is told to a thousandth. */
const whole = (speed: string): string => (/^\d{1,3}[.,]\d{3}$/.test(speed) ? speed.replace(/[.,]/, '') : speed);

/** Words beside the numbers, such as their units, are passed over. Where something else parts the two, a comma is a decimal mark. */
function partsOf(line: string): string[] {
  const bare = line.replace(/[a-z°·/]+/gi, ' ').trim();
  const byOther = bare.split(/[\s;]+/).filter((part) => part !== '' && part !== ',');
  if (byOther.length === 2) {
    const [speed, torque] = byOther.map((part) => part.replace(/,$/, ''));
    return [whole(speed!), torque!].map((part) => part.replace(',', '.'));
  }
  return bare.split(/[\s;,]+/).filter((part) => part !== '');
}

export function writeMeasured(points: readonly (readonly [number, number])[], unit: TorqueUnit): string {
  const inUnit = IN_NEWTON_METRES[unit];
  return points
    .map(([speed, torque]) => `${speed} ${Number((torque / inUnit).toFixed(unit === 'kgf m' ? 2 : 1))}`)
    .join('\n');
}
