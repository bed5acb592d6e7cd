/**
 * What passes a plane, written into it from the state there: a wall, gas that leaves the pipe, gas that enters it. SI units,
 * positive out of the pipe. Leaving gas is the interior's own; entering gas brings its stagnation enthalpy and its fractions.
 */
import type { Planes } from './planes';
import type { Wave } from './wave';

/** Nothing passes; the wave's last answer has the pressure. */
export function writeWall(planes: Planes, wave: Wave): void {
  const i = wave.plane;
  planes.massFlux[i] = 0;
  planes.momentumFlux[i] = wave.p;
  planes.energyFlux[i] = 0;
  planes.planeDensity[i] = wave.rho;
  planes.planeVelocity[i] = 0;
  planes.planePressure[i] = wave.p;
  const { count, gas, partialFlux, planeFractions, fractions } = planes;
  for (let k = 0, at = i; k < gas.carried; k++, at += count) {
    partialFlux[at] = 0;
    planeFractions[at] = fractions[at]!;
  }
}

/** The wave's last answer leaves the pipe. */
export function writeLeaving(planes: Planes, wave: Wave): void {
  const i = wave.plane;
  const mass = wave.rho * wave.u;
  planes.massFlux[i] = mass;
  planes.momentumFlux[i] = wave.p + mass * wave.u;
  planes.energyFlux[i] = mass * stagnationEnthalpy(planes, wave);
  planes.planeDensity[i] = wave.rho;
  planes.planeVelocity[i] = wave.u;
  planes.planePressure[i] = wave.p;
  const { count, gas, partialFlux, planeFractions, fractions } = planes;
  for (let k = 0, at = i; k < gas.carried; k++, at += count) {
    const share = fractions[at]!;
    partialFlux[at] = mass * share;
    planeFractions[at] = share;
  }
}

/** J/kg of the pipe's own gas in the wave's last answer. */
export function stagnationEnthalpy(planes: Planes, wave: Wave): number {
  const temperature = wave.p / (wave.rho * wave.gasConstant);
  return planes.gas.enthalpy(temperature, planes.fractions, wave.plane, planes.count) + 0.5 * wave.u * wave.u;
}

/**
 * @param mass kg/(m² s) into the pipe, 0 or more
 * @param speed into the pipe
 * @param entering fractions of the carried components, in a row
 */
export function writeEntering(
  planes: Planes,
  i: number,
  mass: number,
  speed: number,
  density: number,
  pressure: number,
  enthalpy: number,
  entering: Float64Array,
): void {
  planes.massFlux[i] = 0 - mass;
  planes.momentumFlux[i] = pressure + mass * speed;
  planes.energyFlux[i] = 0 - mass * enthalpy;
  planes.planeDensity[i] = density;
  planes.planeVelocity[i] = 0 - speed;
  planes.planePressure[i] = pressure;
  const { count, gas, partialFlux, planeFractions } = planes;
  for (let k = 0, at = i; k < gas.carried; k++, at += count) {
    const share = entering[k]!;
    partialFlux[at] = 0 - mass * share;
    planeFractions[at] = share;
  }
}
