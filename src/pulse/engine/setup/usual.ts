/**
 * What an engine is taken to be where its design does not say. Common practice, to be replaced by what is known of the engine, unless
 * a source is named. mm, crank degrees, bar, K as the names say; the setup turns them into SI.
 */

/** Rod over stroke: 1.5 to 1.9 in most engines. */
export const ROD_PER_STROKE = 1.65;
export const COMPRESSION_RATIO = 10;
export const SPEEDS = [1500, 7000] as const;

/** Head diameter over the bore, by how many of that kind a cylinder has. */
export const VALVE_PER_BORE = {
  intake: { one: 0.45, several: 0.385 },
  exhaust: { one: 0.38, several: 0.33 },
} as const;
/** Lift over the valve's own diameter. */
export const LIFT_PER_DIAMETER = { intake: 0.29, exhaust: 0.31 } as const;
/** A mild road camshaft, valve off its seat to valve on its seat. */
export const EVENTS = { intake: [-12, 228], exhaust: [-232, 10] } as const;

/** 50 % burnt here gives the most work: 8 to 10 from memory, after Heywood, Internal Combustion Engine Fundamentals, sec. 9.2.2. */
export const BURN_MIDDLE = 8;
/** 0 to 100 % at full load: 40 to 70, from memory, Heywood as above. */
export const BURN_DURATION = 60;
/** The rest stays unburnt or dissociated, which the gas here cannot. */
export const BURN_EFFICIENCY = 0.95;
/** Rich for the most torque: 0.85 to 0.92. */
export const LAMBDA = 0.88;
/** Petrol, from memory: MJ/kg, and kg of air that burn one kg. */
export const FUEL = { heat: 44.0, airPerFuel: 14.6 } as const;

/** Valve to plenum or mouth, mm. */
export const RUNNER_LENGTH = 350;
/** Cross-section over the area of the intake valves' heads. */
export const RUNNER_PER_VALVES = 0.85;
/** Plenum over displacement. */
export const PLENUM_PER_DISPLACEMENT = 1.5;
/** Mean speed of the air in the open throttle at the highest speed, m/s, from which it is sized. */
export const THROTTLE_AIR_SPEED = 50;
/** Of the open throttle with filter and duct. */
export const THROTTLE_COEFFICIENT = 0.8;
/** K, mm. */
export const INTAKE_WALL_TEMPERATURE = 320;
export const INTAKE_ROUGHNESS = 0.03;

/** Piston, head and liner at full load, one for all, K. */
export const CYLINDER_WALL_TEMPERATURE = 450;
/** On Woschni's heat with flat faces: brings the heat balance at full load near the published ones. */
export const CHAMBER = 1.4;
/**
 * The form of S. K. Chen and P. F. Flynn, SAE 650733 (1965), with a square term and the numbers usual for spark-ignition engines (from
 * memory): bar, bar per bar, bar per m/s, bar per (m/s)².
 */
export const FRICTION = { constant: 0.4, perPeak: 0.005, perSpeed: 0.09, perSquare: 0.0009 } as const;

/** ICAO standard atmosphere at sea level: hPa, °C. */
export const AIR = { pressure: 1013.25, temperature: 15 } as const;
