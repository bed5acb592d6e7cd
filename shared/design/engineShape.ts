/** The shape of a design's engine: types, ranges, counts. mm, crank degrees, rpm. What its fields owe each other: engineRules.ts. */
import { z } from 'zod';
import { list, maybe, object, oneOf, ranged } from './fields';
import { MAX_CYLINDERS, MAX_FLOWS, MAX_LIFTS, MAX_MEASURED } from './limits';
import {
  AIR_PRESSURE,
  AIR_TEMPERATURE,
  BURN_DURATION,
  BURN_MIDDLE,
  COMPRESSION,
  CRANK,
  CYLINDERS,
  FIRING,
  FITTED_FLOW,
  FITTED_FRICTION,
  FITTED_HEAT,
  FLOW,
  LAMBDA,
  LENGTH,
  LIFT,
  LIFT_OVER_DIAMETER,
  LOSS,
  MEASURED_SPEED,
  PLENUM,
  SHARE,
  SPEED,
  TORQUE,
  VALVES,
} from './ranges';

const length = ranged(LENGTH, 'mm');
const crank = ranged(CRANK, 'degrees');
const speed = ranged(SPEED, 'rpm');
const cylinder = ranged(CYLINDERS);

const lift = z.tuple([crank, ranged(LIFT, 'mm')], 'two numbers: crank angle in degrees, lift in mm');
const flow = z.tuple(
  [ranged(LIFT_OVER_DIAMETER, '(lift over diameter: 8 mm of a 32 mm valve is 0.25)'), ranged(FLOW)],
  'two numbers: lift over diameter, flow coefficient of the curtain area',
);
const valve = object({
  count: ranged(VALVES),
  diameter: length,
  lift: length,
  opens: crank,
  closes: crank,
  lifts: maybe(list(lift, MAX_LIFTS, 'rows of crank angle and lift')),
  flow: maybe(list(flow, MAX_FLOWS, 'rows of lift over diameter and coefficient')),
});

const intake = object({
  runnerLength: maybe(length),
  runnerDiameter: maybe(length),
  plenumVolume: maybe(ranged(PLENUM, 'cm³')),
  throttleDiameter: maybe(length),
});
const combustion = object({
  lambda: maybe(ranged(LAMBDA, '(air over what the fuel needs: 12.8 kg of air to 1 kg of petrol is about 0.88)')),
  burnMiddle: maybe(ranged(BURN_MIDDLE, 'degrees after top dead centre')),
  burnDuration: maybe(ranged(BURN_DURATION, 'degrees')),
  efficiency: maybe(ranged(SHARE, '(a share: 95 percent is 0.95)')),
});
const air = object({
  pressure: maybe(ranged(AIR_PRESSURE, 'hPa (1.013 bar, 101325 Pa and 29.92 inches of mercury are 1013.25)')),
  temperature: maybe(ranged(AIR_TEMPERATURE, '°C (288.15 K and 59 °F are 15)')),
});
const fitted = object({
  flow: maybe(ranged(FITTED_FLOW)),
  friction: maybe(ranged(FITTED_FRICTION)),
  heat: maybe(ranged(FITTED_HEAT)),
});
const measured = z.tuple(
  [ranged(MEASURED_SPEED, 'rpm'), ranged(TORQUE, 'N m')],
  'two numbers: speed in rpm, torque in N m',
);
const baseline = object({
  on: maybe(oneOf('cast', 'header')),
  points: list(measured, MAX_MEASURED, 'rows of speed and torque'),
  loss: maybe(ranged(LOSS, 'percent')),
});

export const engineShape = object({
  cylinders: maybe(cylinder),
  banks: maybe(list(list(cylinder, MAX_CYLINDERS, 'cylinder numbers'), MAX_CYLINDERS, 'banks')),
  firingOrder: maybe(list(cylinder, MAX_CYLINDERS, 'cylinder numbers')),
  bore: maybe(length),
  stroke: maybe(length),
  rod: maybe(length),
  compressionRatio: maybe(ranged(COMPRESSION)),
  rpm: maybe(z.tuple([speed, speed], 'two numbers, lowest and highest rpm')),
  intakeValve: maybe(valve),
  exhaustValve: maybe(valve),
  firingAngles: maybe(list(ranged(FIRING, 'degrees'), MAX_CYLINDERS, 'crank angles')),
  intake: maybe(intake),
  combustion: maybe(combustion),
  air: maybe(air),
  fitted: maybe(fitted),
  baseline: maybe(baseline),
});
