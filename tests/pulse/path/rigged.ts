/** A gas path as a rig at rest with its valves shut, so that the rig's own checks judge its pipes and ends. SI units. */
import type { GasPath } from '../../../src/pulse/path/types';
import { validateRig } from '../../../src/pulse/rig/read';
import type { Rig } from '../../../src/pulse/rig/types';

/** @throws DesignError with what a rig refuses of it */
export function rigged(path: GasPath, duration = 1e-3): Rig {
  return validateRig({
    format: 'evenrun-rig',
    version: 1,
    gas: { gamma: 1.35, gasConstant: 287 },
    ambient: { pressure: 101325, temperature: 288.15 },
    pipes: path.pipes.map(({ id, length, diameter, roughness, wallTemperature }) => ({
      id,
      length,
      cells: Math.max(1, Math.round(length / 0.02)),
      diameter,
      friction: { roughness },
      wallTemperature,
      initial: [{ from: 0, to: length, pressure: 101325, temperature: 700, velocity: 0 }],
    })),
    ends: [...path.ends, ...path.valves.map(({ pipe }) => ({ kind: 'closed', at: [pipe, 'start'] }))],
    duration,
  });
}
