/** The mass of a metre of tube against published lists. Sources are named beside each; lb/ft lists converted exactly. */
import { expect, test } from 'vitest';
import { materialOf } from '../../shared/stock/materials';
import { BWG_WALLS, tubeMass } from '../../shared/stock/tubes';

const density = (id: string): number => materialOf(id)!.density;
const massPerMetre = (outsideDiameter: number, wall: number, density: number): number =>
  tubeMass({ outsideDiameter, wall }, 1000, density);
const INCH = 25.4;
const POUND_PER_FOOT = 0.45359237 / 0.3048;

// Steel tube weight sheet with examples; stainless stockist's theoretical-weight page (57 × 3.5). Read in source, ±0.001
// but for 57 × 3.5, printed to two decimals.
test.each([
  ['mild-steel', 75, 1, 1.825, 0.001],
  ['mild-steel', 10, 0.5, 0.117, 0.001],
  ['stainless-304', 57, 3.5, 4.66, 0.005],
])('%s %d × %d: %d kg/m as printed', (material, outsideDiameter, wall, printed, rounding) => {
  expect(Math.abs(massPerMetre(outsideDiameter, wall, density(material)) - printed)).toBeLessThanOrEqual(rounding);
});

// The same sheet prints 2.961 kg/m for 4.000 × 0.047 in. That is 0.17 % above the formula which its other examples follow
// to the last digit, whatever the rounding of the wall: taken for a slip of the sheet. Recorded here, not hidden.
test('the one example that does not follow its own sheet', () => {
  const ours = massPerMetre(4 * INCH, 0.047 * INCH, density('mild-steel'));
  expect(Math.abs(ours - 2.956)).toBeLessThanOrEqual(0.001);
  expect(Math.abs(2.961 / ours - 1)).toBeLessThan(0.002);
});

// ASTM A554 size and weight list on a stockist's page, lb/ft, ±0.002, read in source. Its formula is 10.68·(D − t)·t in
// inches, a carbon constant although A554 is stainless: the density it implies is used here, 7842 kg/m³.
const A554_DENSITY = (10.68 * POUND_PER_FOOT) / (INCH * INCH) / (Math.PI * 1e-6);

test('the list’s constant is that of carbon steel', () => {
  expect(Math.abs(A554_DENSITY / density('mild-steel') - 1)).toBeLessThan(0.002);
});

test.each([
  [1.5, 0.065, 0.996],
  [1.625, 0.065, 1.083],
  [1.75, 0.035, 0.641],
  [1.875, 0.049, 0.956],
  [2, 0.049, 1.021],
  [2, 0.065, 1.343],
  [2.25, 0.049, 1.152],
  [2.5, 0.049, 1.283],
  [4, 0.065, 2.73],
])('%d × %d in: %d lb/ft as printed', (outsideDiameter, wall, printed) => {
  const mass = massPerMetre(outsideDiameter * INCH, wall * INCH, A554_DENSITY);
  expect(Math.abs(mass / POUND_PER_FOOT - printed)).toBeLessThanOrEqual(0.002);
});

// Recomputed independently for the sizes in use, kg/m carbon and stainless 304, ±0.0001.
test.each([
  [33.7, 2, 1.5635, 1.5795],
  [38, 1.5, 1.3502, 1.364],
  [38.1, 1.65, 1.4832, 1.4983],
  [42.4, 1.5, 1.513, 1.5284],
  [42.4, 2, 1.9926, 2.013],
  [44.45, 1.65, 1.7416, 1.7593],
  [44.5, 1.5, 1.5907, 1.6069],
  [48.3, 1.5, 1.7312, 1.7489],
  [48.3, 2, 2.2837, 2.3069],
  [50.8, 1.5, 1.8237, 1.8423],
  [50.8, 1.65, 2.0, 2.0204],
  [54, 1.5, 1.9421, 1.9619],
  [60.3, 1.5, 2.1751, 2.1973],
  [60.3, 2, 2.8755, 2.9048],
  [63.5, 1.5, 2.2935, 2.3169],
  [63.5, 1.65, 2.5168, 2.5424],
  [76.1, 1.5, 2.7596, 2.7877],
  [76.1, 2, 3.6548, 3.6921],
  [76.2, 1.65, 3.0335, 3.0645],
  [88.9, 2, 4.2862, 4.3298],
])('%d × %d: %d kg/m carbon, %d stainless', (outsideDiameter, wall, carbon, stainless) => {
  expect(Math.abs(massPerMetre(outsideDiameter, wall, density('mild-steel')) - carbon)).toBeLessThanOrEqual(0.0001);
  expect(Math.abs(massPerMetre(outsideDiameter, wall, density('stainless-304')) - stainless)).toBeLessThanOrEqual(
    0.0001,
  );
});

// Birmingham wire gauge in mm, three agreeing tables, ±0.0005, read in source.
test.each([
  [14, 2.108],
  [16, 1.651],
  [18, 1.245],
  [20, 0.889],
])('gauge %d is %d mm', (gauge, mm) => {
  expect(Math.abs(BWG_WALLS[gauge]! * INCH - mm)).toBeLessThanOrEqual(0.0005);
});
