/**
 * The engine of a design as the solver takes it, SI units. Cylinders, bore and stroke must be given; all else has a usual value where
 * the design is silent, and every such value is told, so that nobody takes a guess for a fact. What cannot be is refused by its path, all
 * of it at once, with what would mend it.
 */
import { insist } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { airSetup, burnSetup, flowFactor, frictionSetup, fuelSetup, wallSetup } from './setup/burning';
import { firingOf } from './setup/cylinders';
import { intakeSetup } from './setup/intake';
import type { Notes } from './setup/notes';
import { sizesOf } from './setup/sizes';
import { valveSetup, valvesOf } from './setup/valves';
import type { Assumed, EngineSetup } from './types';

export type EngineRead = { readonly setup: EngineSetup; readonly assumed: readonly Assumed[] };

/** @param design that `parseDesign` lets through. @throws DesignError naming every path */
export function engineSetup(design: Design): EngineRead {
  const notes: Notes = { problems: [], assumed: [] };
  const firing = firingOf(design, notes);
  const sizes = sizesOf(design, notes);
  // Of an unknown bore the valves' sizes cannot be judged, but when they open can.
  const valves = valvesOf(design, sizes?.bore ?? Number.POSITIVE_INFINITY, notes);
  if (!firing || !sizes) {
    insist(notes.problems);
    throw new Error('an engine without cylinders or sizes was not refused');
  }
  const { bore, stroke, rod, compressionRatio, speeds } = sizes;
  const count = firing.cylinders.length;
  const displacement = ((Math.PI / 4) * bore ** 2 * stroke * count) / 1000;
  const setup: EngineSetup = {
    ...firing,
    bore: bore / 1000,
    stroke: stroke / 1000,
    rod: rod / 1000,
    compressionRatio,
    intakeValve: valveSetup('intake', valves.intake, notes),
    exhaustValve: valveSetup('exhaust', valves.exhaust, notes),
    burn: burnSetup(design, notes),
    fuel: fuelSetup(design, notes),
    walls: wallSetup(design, notes),
    friction: frictionSetup(design, notes),
    flowFactor: flowFactor(design, notes),
    intake: intakeSetup(design, valves.intake, displacement, count, speeds[1], notes),
    air: airSetup(design, notes),
    speeds,
  };
  insist(notes.problems);
  return { setup, assumed: notes.assumed };
}
