/** How the charge burns, what of its heat the walls take, what friction takes, and the air outside. SI out. */
import type { Design } from '../../../../shared/design/types';
import type { BurnSetup, EngineSetup, FrictionSetup, FuelSetup, WallSetup } from '../types';
import { assume, givenOr, type Notes, PRACTICE, told } from './notes';
import {
  AIR,
  BURN_DURATION,
  BURN_EFFICIENCY,
  BURN_MIDDLE,
  CHAMBER,
  CYLINDER_WALL_TEMPERATURE,
  FRICTION,
  FUEL,
  LAMBDA,
} from './usual';

const BAR = 1e5;
const KELVIN_AT_0_C = 273.15;

export function burnSetup({ engine: { combustion = {} } = {} }: Design, notes: Notes): BurnSetup {
  const path = 'engine/combustion';
  const memory = 'textbook, from memory';
  return {
    middle: givenOr(notes, `${path}/burnMiddle`, combustion.burnMiddle, () => ({
      value: BURN_MIDDLE,
      name: 'Half burnt',
      taken: `${BURN_MIDDLE}° after top dead centre`,
      why: `ignition at its best at every speed; ${memory}`,
    })),
    duration: givenOr(notes, `${path}/burnDuration`, combustion.burnDuration, () => ({
      value: BURN_DURATION,
      name: 'Burning',
      taken: `${BURN_DURATION}° of the crank at every speed`,
      why: memory,
    })),
    efficiency: givenOr(notes, `${path}/efficiency`, combustion.efficiency, () => ({
      value: BURN_EFFICIENCY,
      name: 'Heat released',
      taken: `${told(100 * BURN_EFFICIENCY)} % of what the air can release`,
      why: `the rest burns incompletely or not at all; ${PRACTICE}`,
    })),
  };
}

export function fuelSetup({ engine: { combustion = {} } = {} }: Design, notes: Notes): FuelSetup {
  const path = 'engine/combustion';
  const lambda = givenOr(notes, `${path}/lambda`, combustion.lambda, () => ({
    value: LAMBDA,
    name: 'Mixture',
    taken: `${LAMBDA} of the air that the fuel needs`,
    why: `rich, as engines are run at full load; ${PRACTICE}`,
  }));
  const taken = `petrol: ${told(FUEL.heat)} MJ/kg, ${FUEL.airPerFuel} kg of air to 1 kg`;
  assume(notes, path, 'Fuel', taken, 'from memory; a design names no other');
  return { heat: FUEL.heat * 1e6, airPerFuel: FUEL.airPerFuel, lambda };
}

/** Walls as usual, their heat times a factor. */
export const wallsTimes = (times: number): WallSetup => ({
  temperature: CYLINDER_WALL_TEMPERATURE,
  factor: CHAMBER * times,
});

export function wallSetup({ engine: { fitted = {} } = {} }: Design, notes: Notes): WallSetup {
  const celsius = told(CYLINDER_WALL_TEMPERATURE - KELVIN_AT_0_C, 0);
  assume(notes, 'engine', 'Cylinder walls', `${celsius} °C, piston, head and liner alike`, PRACTICE);
  const more = `${CHAMBER} times Woschni's coefficient on flat faces`;
  assume(
    notes,
    'engine',
    'Heat law',
    more,
    'chambers are not flat, and the heat balance comes near published ones so: our own choice',
  );
  return wallsTimes(factor('heat', 'Heat to the walls', fitted.heat, notes));
}

/** The usual law, all of it times a factor. */
export const frictionTimes = (times: number): FrictionSetup => ({
  constant: times * FRICTION.constant * BAR,
  perPeak: times * FRICTION.perPeak,
  perSpeed: times * FRICTION.perSpeed * BAR,
  perSquare: times * FRICTION.perSquare * BAR,
});

export function frictionSetup({ engine: { fitted = {} } = {} }: Design, notes: Notes): FrictionSetup {
  const { constant, perPeak, perSpeed, perSquare } = FRICTION;
  const law = `${constant} bar + ${perPeak} × peak pressure + ${perSpeed} bar × piston speed + ${perSquare} bar × its square, m/s`;
  assume(notes, 'engine', 'Friction law', law, 'Chen and Flynn’s form with numbers usual for petrol, from memory');
  return frictionTimes(factor('friction', 'Friction', fitted.friction, notes));
}

export const flowFactor = ({ engine: { fitted = {} } = {} }: Design, notes: Notes): number =>
  factor('flow', 'Valve flow', fitted.flow, notes);

const factor = (key: 'flow' | 'friction' | 'heat', name: string, given: number | undefined, notes: Notes): number =>
  givenOr(notes, `engine/fitted/${key}`, given, () => ({
    value: 1,
    name,
    taken: 'as usual, factor 1',
    why: 'no measured curve has told otherwise',
  }));

export function airSetup({ engine: { air = {} } = {} }: Design, notes: Notes): EngineSetup['air'] {
  const why = 'the standard atmosphere at sea level';
  const pressure = givenOr(notes, 'engine/air/pressure', air.pressure, () => ({
    value: AIR.pressure,
    name: 'Air pressure',
    taken: `${AIR.pressure} hPa`,
    why,
  }));
  const temperature = givenOr(notes, 'engine/air/temperature', air.temperature, () => ({
    value: AIR.temperature,
    name: 'Air temperature',
    taken: `${AIR.temperature} °C`,
    why,
  }));
  return { pressure: pressure * 100, temperature: temperature + KELVIN_AT_0_C };
}
