/**
 * Heat capacities of pure species as ideal gases: cp by temperature, J/(kg K), K. Polynomials in seven coefficients after McBride,
 * Gordon & Reno, NASA TM-4513, 1993 (the later database of Burcat & Ruscic, ANL-05/20, 2005, prints the same), read in public
 * copies of these tables; the tests hold them against printed values of the JANAF tables. The two coefficients that fix the zeros
 * of enthalpy and entropy are left out: energy here is sensible and 0 at 0 K.
 */

/** J/(mol K): exact in the SI of 2019. */
export const MOLAR_GAS_CONSTANT = 8.31446261815324;

export type Species = {
  /** kg/mol */
  readonly molarMass: number;
  /** J/(mol K). Held at the ends of the range beyond it. */
  readonly molarHeat: (temperature: number) => number;
};

const MIDDLE = 1000;
type Five = readonly [number, number, number, number, number];

function polynomial(molarMass: number, below: Five, above: Five): Species {
  return {
    molarMass,
    molarHeat: (temperature) => {
      const t = Math.min(Math.max(temperature, 200), 6000);
      const [a, b, c, d, e] = t < MIDDLE ? below : above;
      return MOLAR_GAS_CONSTANT * (a + t * (b + t * (c + t * (d + t * e))));
    },
  };
}

export const nitrogen = polynomial(
  28.014e-3,
  [3.53100528, -1.23660988e-4, -5.02999433e-7, 2.43530612e-9, -1.40881235e-12],
  [2.95257637, 1.3969004e-3, -4.92631603e-7, 7.86010195e-11, -4.60755204e-15],
);

export const oxygen = polynomial(
  31.998e-3,
  [3.78245636, -2.99673416e-3, 9.84730201e-6, -9.68129509e-9, 3.24372837e-12],
  [3.66096065, 6.56365811e-4, -1.41149627e-7, 2.05797935e-11, -1.29913436e-15],
);

export const carbonDioxide = polynomial(
  44.009e-3,
  [2.356813, 8.9841299e-3, -7.1220632e-6, 2.4573008e-9, -1.4288548e-13],
  [4.6365111, 2.7414569e-3, -9.9589759e-7, 1.6038666e-10, -9.1619857e-15],
);

export const waterVapour = polynomial(
  18.015e-3,
  [4.1986352, -2.0364017e-3, 6.5203416e-6, -5.4879269e-9, 1.771968e-12],
  [2.6770389, 2.9731816e-3, -7.7376889e-7, 9.4433514e-11, -4.2689991e-15],
);

export const argon: Species = { molarMass: 39.948e-3, molarHeat: () => 2.5 * MOLAR_GAS_CONSTANT };

/**
 * Vapour of petrol, taken as one substance C8.26H15.5: fit in cal/(mol K) and kK for 300 to 1500 K in J. B. Heywood, Internal
 * Combustion Engine Fundamentals, 1988, ch. 4 (from memory, agreeing with a public copy of the numbers).
 */
export const PETROL = { carbon: 8.26, hydrogen: 15.5 };
export const petrolVapour: Species = {
  molarMass: PETROL.carbon * 12.011e-3 + PETROL.hydrogen * 1.008e-3,
  molarHeat: (temperature) => {
    const t = Math.min(Math.max(temperature, 300), 1500) / 1000;
    return 4.184 * (-24.078 + t * (256.63 + t * (-201.68 + t * 64.75)) + 0.5808 / (t * t));
  },
};
