/**
 * Whether a measured torque curve can be this engine's: enough points, speeds rising; and, asked apart, a mean effective pressure
 * that an engine without a blower can have. rpm, N m, mm.
 */
import type { Refusal } from './refusal';
import { risingProblems } from './rising';
import type { Engine } from './types';

/** Fewer cannot tell flow from friction, nor either from heat. */
export const LEAST_POINTS = 3;

/** The highest speed over the lowest. Closer together, they tell no more than one: our own choice. */
export const LEAST_SPREAD = 1.3;

/**
 * bar, at the best speed. From memory, after Heywood, Internal Combustion Engine Fundamentals, sec. 2.7: 8.5 to 10.5 for the engines of
 * 1988, 11 to 13 now, up to 15.5 for racing. Beyond these two, unit or displacement is another.
 */
const LEAST_BMEP = 3;
const MOST_BMEP = 16;
/** Where a remedy must lead to, to be offered. */
const USUAL_BMEP = [6, 15.5] as const;

/** N m in one of it. Not lb ft (1.3558 N m): a third too little is still a usual engine's torque, and cannot be told. */
const UNITS = [
  { name: 'kgf m', inNewtonMetres: 9.80665 },
  { name: 'lb in', inNewtonMetres: 0.11298 },
] as const;

/** Of power: N m are times so much over rpm. Mechanical and metric horsepower lie 1.4 % apart. */
const POWERS = [
  { name: 'kW', times: 9549 },
  { name: 'hp', times: 7121 },
] as const;

/**
 * d ln torque / d ln speed over a whole curve, from which it rises as power does: torque over the speeds used is 0 to 0.4, and a
 * racing engine's with a hole low down 0.65 (common practice); power of the same is 1 more. Our own choice between the two.
 */
const POWER_SLOPE = 0.85;

export function baselineProblems(engine: Engine): Refusal[] {
  const { baseline } = engine;
  if (!baseline) return [];
  const path = 'engine/baseline/points';
  const { points } = baseline;
  if (points.length < LEAST_POINTS) {
    const found = points.length === 1 ? 'one point' : `${points.length} points`;
    const why = 'one speed alone cannot tell what the flow does from what friction and heat do';
    return [{ path, found, allowed: `at least ${LEAST_POINTS} points over the speeds used: ${why}` }];
  }
  const speeds = points.map(([speed]) => speed);
  const falling = risingProblems(path, speeds, 'speed', 'rows from the slowest to the fastest, each speed once');
  if (falling.length > 0) return falling;
  const [lowest, highest] = [speeds[0]!, speeds.at(-1)!];
  if (highest >= LEAST_SPREAD * lowest) return [];
  const why =
    'so close together they are as one speed, which cannot tell what the flow does from what friction and heat do';
  const allowed = `the highest at least ${LEAST_SPREAD} times the lowest: ${why}`;
  return [{ path, found: `${lowest} to ${highest} rpm`, allowed }];
}

/** cm³ of all cylinders; null where the engine does not say. */
export function displacementOf({ bore, stroke, cylinders, firingOrder }: Engine): number | null {
  const count = cylinders ?? firingOrder?.length;
  if (bore === undefined || stroke === undefined || !count) return null;
  return ((Math.PI / 4) * bore * bore * stroke * count) / 1000;
}

/** Brake mean effective pressure of a four-stroke, bar: T·4π/V. @param torque N m at the crank. @param displacement cm³ */
export const bmepOf = (torque: number, displacement: number): number => (torque * 4 * Math.PI * 10) / displacement;

/**
 * A torque in another unit, or another engine's. No rule of the document, or a bore could not be set right after the curve: asked
 * where a curve is entered and where it is used. Empty where the engine's displacement is not known.
 */
export function torqueProblems(engine: Engine): Refusal[] {
  const displacement = displacementOf(engine);
  const { points = [], loss = 0 } = engine.baseline ?? {};
  if (displacement === null || points.length === 0) return [];
  const best = points.reduce((most, [, torque], i) => (torque > points[most]![1] ? i : most), 0);
  const torque = points[best]![1];
  const atCrank = (value: number): number => bmepOf(value / (1 - loss / 100), displacement);
  const bmep = atCrank(torque);
  const isUsual = (bar: number): boolean => bar >= USUAL_BMEP[0] && bar <= USUAL_BMEP[1];
  const power = powersLike(points).filter(({ times }) =>
    isUsual(atCrank(Math.max(...points.map(([rpm, value]) => (value * times) / rpm)))),
  );
  const isTorque = bmep >= LEAST_BMEP && bmep <= MOST_BMEP;
  if (isTorque && power.length === 0) return [];
  const units = UNITS.filter(({ inNewtonMetres }) => isUsual(bmep * inNewtonMetres));
  const remedy = [
    ...power.map(({ name, times }) => `if it is power in ${name}, × ${times} / rpm in each row`),
    ...units.map(({ name, inNewtonMetres }) => `if it is ${name}, × ${inNewtonMetres}`),
  ];
  const rising = power.length > 0 ? ', and rising with speed as power does' : '';
  const found = `${Number(torque.toPrecision(5))} N m at most, ${round(bmep)} bar of mean effective pressure on ${Math.round(displacement)} cm³${rising}`;
  const usual = `N m that make ${LEAST_BMEP} to ${MOST_BMEP} bar at the best speed, as engines without a blower do`;
  const allowed = isTorque
    ? ['N m, which do not rise as speed does', ...remedy].join('; ')
    : [usual, ...remedy, 'or another bore, stroke or number of cylinders'].join('; ');
  return [{ path: `engine/baseline/points/${best}/1`, found, allowed }];
}

/** Units of power that a second column may be in; none where it does not rise with speed as power does. */
function powersLike(points: readonly (readonly [rpm: number, value: number])[]): readonly (typeof POWERS)[number][] {
  const logs = points.map(([rpm, value]) => [Math.log(rpm), Math.log(value)] as const);
  const mean = (k: 0 | 1): number => logs.reduce((sum, log) => sum + log[k], 0) / logs.length;
  const [speed, value] = [mean(0), mean(1)];
  const square = logs.reduce((sum, [x]) => sum + (x - speed) ** 2, 0);
  const slope = logs.reduce((sum, [x, y]) => sum + (x - speed) * (y - value), 0) / square;
  return slope >= POWER_SLOPE ? POWERS : [];
}

const round = (bar: number): number => Number(bar.toPrecision(3));
