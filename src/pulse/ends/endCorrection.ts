/**
 * How much longer than its metal a pipe that opens into the surroundings is to sound: the gas outside swings along. A length only,
 * for long waves; whoever lays out the cells adds it. m. In radii of the opening: unflanged 0.6133 (Levine & Schwinger 1948,
 * Phys. Rev. 73), flanged 0.8217 (Nomura, Yamamura & Inawashiro 1960, J. Phys. Soc. Japan 15).
 */
import type { OpenEnd } from '../rig/types';

export function endCorrection(kind: OpenEnd['endCorrection'], radius: number): number {
  if (kind === undefined) return 0;
  if (kind === 'unflanged') return 0.6133 * radius;
  if (kind === 'flanged') return 0.8217 * radius;
  return kind * radius;
}
