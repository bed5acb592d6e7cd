/** The way of the fresh charge: runner, plenum, throttle, by common practice where not given. mm and cm³ in, SI out. */
import type { Design, Valve } from '../../../../shared/design/types';
import type { IntakeSetup } from '../types';
import { assume, givenOr, type Notes, PRACTICE, refuse, told } from './notes';
import {
  INTAKE_ROUGHNESS,
  INTAKE_WALL_TEMPERATURE,
  PLENUM_PER_DISPLACEMENT,
  RUNNER_LENGTH,
  RUNNER_PER_VALVES,
  THROTTLE_AIR_SPEED,
  THROTTLE_COEFFICIENT,
} from './usual';

/** @param displacement of all cylinders, cm³. @param speed the highest, rpm */
export function intakeSetup(
  { engine: { intake = {} } = {} }: Design,
  valve: Valve,
  displacement: number,
  cylinders: number,
  speed: number,
  notes: Notes,
): IntakeSetup {
  const path = 'engine/intake';
  const runnerLength = givenOr(notes, `${path}/runnerLength`, intake.runnerLength, () => ({
    value: RUNNER_LENGTH,
    name: 'Intake runner',
    taken: `${RUNNER_LENGTH} mm from the valve`,
    why: `${PRACTICE} on the road`,
  }));
  const runnerDiameter = givenOr(notes, `${path}/runnerDiameter`, intake.runnerDiameter, () => {
    const value = tenth(valve.diameter * Math.sqrt(RUNNER_PER_VALVES * valve.count));
    return {
      value,
      name: 'Intake runner, inside',
      taken: `${value} mm`,
      why: `${RUNNER_PER_VALVES} × the area of the intake valves, ${PRACTICE}`,
    };
  });
  const plenumVolume = givenOr(notes, `${path}/plenumVolume`, intake.plenumVolume, () => {
    const value = Math.round((PLENUM_PER_DISPLACEMENT * displacement) / 10) * 10;
    return {
      value,
      name: 'Plenum',
      taken: `${value} cm³`,
      why: `${PLENUM_PER_DISPLACEMENT} × displacement, ${PRACTICE}`,
    };
  });
  unitProblems(path, { runnerLength, runnerDiameter, plenumVolume }, valve, displacement / cylinders, notes);
  const open = plenumVolume === 0;
  if (open && intake.throttleDiameter !== undefined) {
    const why = 'there is no plenum: each runner is open to the air, and one throttle for all has no place';
    assume(notes, `${path}/throttleDiameter`, 'Throttle', 'none', why);
  }
  assume(
    notes,
    path,
    'Intake walls',
    `${told(INTAKE_WALL_TEMPERATURE - 273.15)} °C, rough by ${INTAKE_ROUGHNESS} mm`,
    PRACTICE,
  );
  return {
    runnerLength: runnerLength * 1e-3,
    runnerDiameter: runnerDiameter * 1e-3,
    plenumVolume: open ? null : plenumVolume * 1e-6,
    throttleArea: open ? 0 : throttleArea(path, intake.throttleDiameter, valve, displacement, speed, notes),
    wallTemperature: INTAKE_WALL_TEMPERATURE,
    roughness: INTAKE_ROUGHNESS * 1e-3,
  };
}

/** m², effective. Sized for the engine's own displacement every two turns at the highest speed. */
function throttleArea(
  path: string,
  given: number | undefined,
  valve: Valve,
  displacement: number,
  speed: number,
  notes: Notes,
): number {
  const diameter = givenOr(notes, `${path}/throttleDiameter`, given, () => {
    const volumeFlow = (displacement * 1e-6 * speed) / 120;
    const value = Math.round(1e3 * Math.sqrt((4 / Math.PI) * (volumeFlow / THROTTLE_AIR_SPEED)));
    const why = `air at ${THROTTLE_AIR_SPEED} m/s in it at ${speed} rpm, ${PRACTICE}`;
    return { value, name: 'Throttle', taken: `${value} mm, wide open`, why };
  });
  const least = valve.diameter * Math.sqrt(LEAST_THROTTLE * valve.count);
  if (given !== undefined && given < least) {
    const allowed = `at least ${told(least)} mm beside ${valve.count} × ${told(valve.diameter)} mm of valves, wide open; in cm × 10, in inches × 25.4`;
    refuse(notes, `${path}/throttleDiameter`, `${given} mm`, allowed);
  }
  const why = `${PRACTICE}; butterfly, filter and duct together`;
  assume(notes, path, 'Throttle flow', `${THROTTLE_COEFFICIENT} of its area`, why);
  return THROTTLE_COEFFICIENT * (Math.PI / 4) * (diameter * 1e-3) ** 2;
}

/** Shorter runners are no intake, narrower ones pass nothing, a smaller plenum is a joint: another unit. */
const LEAST_RUNNER = 30;
const LEAST_AREA = 0.15;
const LEAST_PLENUM = 0.1;
/** Of the area of one cylinder's intake valves: below this no engine with its throttle wide open fills. */
const LEAST_THROTTLE = 0.15;

type Given = { readonly runnerLength: number; readonly runnerDiameter: number; readonly plenumVolume: number };

function unitProblems(path: string, given: Given, valve: Valve, cylinder: number, notes: Notes): void {
  const { runnerLength, runnerDiameter, plenumVolume } = given;
  if (runnerLength < LEAST_RUNNER) {
    const allowed = `at least ${LEAST_RUNNER} mm, valve to plenum or mouth; in cm × 10, in inches × 25.4, in m × 1000`;
    refuse(notes, `${path}/runnerLength`, `${runnerLength} mm`, allowed);
  }
  const least = valve.diameter * Math.sqrt(LEAST_AREA * valve.count);
  if (runnerDiameter < least) {
    const allowed = `at least ${told(least)} mm beside ${valve.count} × ${told(valve.diameter)} mm of valves; in cm × 10, in inches × 25.4`;
    refuse(notes, `${path}/runnerDiameter`, `${runnerDiameter} mm`, allowed);
  }
  if (plenumVolume > 0 && plenumVolume < LEAST_PLENUM * cylinder) {
    const allowed = `0 for none, or at least ${told(LEAST_PLENUM * cylinder, 0)} cm³, a tenth of a cylinder; in litres × 1000`;
    refuse(notes, `${path}/plenumVolume`, `${plenumVolume} cm³`, allowed);
  }
}

const tenth = (x: number): number => Math.round(10 * x) / 10;
