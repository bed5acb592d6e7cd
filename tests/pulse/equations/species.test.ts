/** Heat capacities of the table's gases against printed values, which are from memory and known to the digits shown. */
import { describe, expect, it } from 'vitest';
import {
  argon,
  carbonDioxide,
  MOLAR_GAS_CONSTANT,
  nitrogen,
  oxygen,
  petrolVapour,
  type Species,
  waterVapour,
} from '../../../src/pulse/equations/species';
import { substance, substanceNames } from '../../../src/pulse/equations/substances';

/** JANAF Thermochemical Tables, 3rd ed., 1985 (from memory): cp at 1000 K, J/(mol K); h(1000) − h(298.15), kJ/mol. */
const JANAF: [string, Species, number, number][] = [
  ['nitrogen', nitrogen, 32.7, 21.46],
  ['oxygen', oxygen, 34.87, 22.7],
  ['carbon dioxide', carbonDioxide, 54.31, 33.4],
  ['water vapour', waterVapour, 41.27, 26.0],
  ['argon', argon, 20.786, 14.589],
];

function rise(species: Species, from: number, to: number): number {
  const steps = 2000;
  const h = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += species.molarHeat(from + (i + 0.5) * h) * h;
  return sum;
}

describe('species', () => {
  it.each(JANAF)(
    '%s: cp at 1000 K and the rise of enthalpy from 298.15 K as in the JANAF tables (from memory)',
    (_, species, cp, h) => {
      expect(Math.abs(species.molarHeat(1000) / cp - 1)).toBeLessThan(1e-3);
      expect(Math.abs(rise(species, 298.15, 1000) / 1000 / h - 1)).toBeLessThan(1.5e-3);
    },
  );

  it.each(JANAF)('%s: the two polynomials meet at 1000 K', (_, species) => {
    expect(species.molarHeat(1000 - 1e-9) / species.molarHeat(1000)).toBeCloseTo(1, 4);
  });

  it('vapour of petrol: about 1.57 kJ/(kg K) at 300 K, 2.9 at 1000 K, and never falling (Heywood 1988, from memory)', () => {
    const perKg = (t: number) => petrolVapour.molarHeat(t) / petrolVapour.molarMass;
    expect(Math.abs(perKg(300) / 1566 - 1)).toBeLessThan(0.02);
    for (let t = 200; t < 4000; t += 10) expect(perKg(t + 10)).toBeGreaterThanOrEqual(perKg(t));
  });
});

describe('substances', () => {
  const cp = (name: string, t: number) => substance(name).heat(t) + substance(name).gasConstant;
  const gamma = (name: string, t: number) => 1 + substance(name).gasConstant / substance(name).heat(t);

  it('dry air: R, cp and γ as in the gas tables of Keenan & Kaye, 1948 (from memory)', () => {
    expect(Math.abs(substance('air').gasConstant - 287.05)).toBeLessThan(0.05);
    expect(Math.abs(cp('air', 300) / 1005 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(cp('air', 1000) / 1141 - 1)).toBeLessThan(1e-3);
    expect(Math.abs(gamma('air', 300) - 1.4)).toBeLessThan(1e-3);
    expect(Math.abs(gamma('air', 1000) - 1.336)).toBeLessThan(1e-3);
  });

  it('burnt gas is made of what the charge is made of: their masses agree, and no oxygen is left', () => {
    // By hand: C8.26H15.5 + 12.135 O2 → 8.26 CO2 + 7.75 H2O, with 57.93 moles of dry air.
    const air = 12.135 / 0.209476;
    const nitrogenAndArgon = air * (0.780874 + 0.00934);
    const burntMoles = nitrogenAndArgon + air * 0.00031 + 8.26 + 7.75;
    const chargeMoles = air + 1;
    const ratio = substance('burnt').gasConstant / substance('charge').gasConstant;
    expect(ratio).toBeCloseTo(burntMoles / chargeMoles, 5);
  });

  it('stoichiometric air to petrol by mass is near 14.6 (Heywood 1988 gives 14.6 for petrol, from memory)', () => {
    const air = substance('air').gasConstant;
    const charge = substance('charge').gasConstant;
    const fuel = substance('fuel vapour').gasConstant;
    // R of the mixture by mass: (afr R_air + R_fuel) / (afr + 1).
    const afr = (charge - fuel) / (air - charge);
    expect(Math.abs(afr - 14.6)).toBeLessThan(0.1);
  });

  it('hot burnt gas has γ near 1.3 at 1200 K and the charge less than air when cold, as common practice has it', () => {
    expect(gamma('burnt', 1200)).toBeGreaterThan(1.27);
    expect(gamma('burnt', 1200)).toBeLessThan(1.31);
    expect(gamma('charge', 320)).toBeGreaterThan(1.34);
    expect(gamma('charge', 320)).toBeLessThan(1.38);
  });

  it('argon has γ = 5/3 at any temperature', () => {
    for (const t of [50, 300, 3000]) expect(gamma('argon', t)).toBeCloseTo(5 / 3, 12);
    expect(substance('argon').gasConstant).toBeCloseTo(MOLAR_GAS_CONSTANT / 39.948e-3, 9);
  });

  it('an unknown name is a mistake of the caller, told with the names there are', () => {
    expect(substanceNames).toContain('burnt');
    expect(() => substance('ether')).toThrow(/ether.*air, burnt, charge/);
  });
});
