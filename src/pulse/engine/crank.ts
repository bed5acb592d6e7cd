/**
 * A piston on a crank: volume and wall area over crank angle, degrees from top dead centre. Textbook geometry without offset (J. B.
 * Heywood, Internal Combustion Engine Fundamentals, ch. 2). SI units.
 */
import type { EngineSetup } from './types';

export type Crank = {
  /** m³ that one cylinder sweeps, and that is left at top dead centre. */
  readonly swept: number;
  readonly clearance: number;
  /** m³ */
  volume(angle: number): number;
  /** Head, piston and the liner that it leaves bare, m². Head and piston count as flat. */
  wall(angle: number): number;
};

const RADIANS = Math.PI / 180;

export function crankOf({
  bore,
  stroke,
  rod,
  compressionRatio,
}: Pick<EngineSetup, 'bore' | 'stroke' | 'rod' | 'compressionRatio'>): Crank {
  const face = 0.25 * Math.PI * bore * bore;
  const swept = face * stroke;
  const clearance = swept / (compressionRatio - 1);
  const radius = 0.5 * stroke;
  /** How far below its top the piston is, m. */
  const below = (angle: number): number => {
    const turned = angle * RADIANS;
    const aside = radius * Math.sin(turned);
    return radius * (1 - Math.cos(turned)) + rod - Math.sqrt(rod * rod - aside * aside);
  };
  return {
    swept,
    clearance,
    volume: (angle) => clearance + face * below(angle),
    wall: (angle) => 2 * face + Math.PI * bore * (below(angle) + clearance / face),
  };
}

/** m/s */
export const meanPistonSpeed = (stroke: number, rpm: number): number => (2 * stroke * rpm) / 60;
