/**
 * The engine with those cylinders alone that a gas path covers, such as one bank whose header is drawn. Plenum and throttle keep their
 * share of it, as if both halves breathed alike. Torque and power are then of these cylinders. SI units.
 */
import type { EngineSetup } from '../engine/types';
import { coveredCylinders } from './reading';
import type { GasPath } from './types';

const CYCLE = 720;

/** The same setup where all are covered. @throws RangeError where the path has a cylinder that the engine has not */
export function coveredEngine(setup: EngineSetup, path: Pick<GasPath, 'valves'>): EngineSetup {
  const covered = coveredCylinders(path);
  const stranger = covered.find((c) => !setup.cylinders.includes(c));
  if (stranger !== undefined) throw new RangeError(`Cylinder ${stranger} of the gas path is none of the engine's`);
  if (covered.length === setup.cylinders.length) return setup;
  const share = covered.length / setup.cylinders.length;
  const firingOrder = setup.firingOrder.filter((c) => covered.includes(c));
  const firesOf = (c: number): number => setup.fires[setup.cylinders.indexOf(c)]!;
  // The cycle begins where the first of the order fires.
  const first = firesOf(firingOrder[0]!);
  const { plenumVolume, throttleArea } = setup.intake;
  return {
    ...setup,
    cylinders: covered,
    firingOrder,
    fires: covered.map((c) => (firesOf(c) - first + CYCLE) % CYCLE),
    intake: {
      ...setup.intake,
      plenumVolume: plenumVolume === null ? null : share * plenumVolume,
      throttleArea: share * throttleArea,
    },
  };
}
