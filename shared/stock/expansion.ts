/**
 * How much materials grow when they get hot: the mean coefficient of linear expansion from 20 °C to a temperature, in millionths
 * a degree. Ids as in materials.ts. Where a row is marked as read it is printed so in sheets of the grade's makers or of nickel
 * producers (ranges from 0 °C are taken as from 20 °C: the difference is far less than between two melts); others are from memory.
 */

type Row = { readonly to: number; readonly mean: number; readonly source: 'read' | 'from memory' };

const row = (to: number, mean: number, source: Row['source'] = 'from memory'): Row => ({ to, mean, source });

const AUSTENITIC: readonly Row[] = [
  row(100, 17.2, 'read'),
  row(315, 17.8, 'read'),
  row(538, 18.4, 'read'),
  row(650, 18.7, 'read'),
  row(870, 19.4),
];
const CARBON: readonly Row[] = [row(100, 12.2, 'read'), row(300, 12.9), row(600, 14.0), row(700, 14.4)];

const TABLE: Readonly<Record<string, readonly Row[]>> = {
  'mild-steel': CARBON,
  'aluminised-steel': CARBON,
  'stainless-304': AUSTENITIC,
  'stainless-316': [row(100, 15.9), row(315, 16.2), row(538, 17.5), row(650, 18.5)],
  'stainless-321': [row(100, 16.6), row(315, 17.2), row(538, 18.6), row(650, 19.3)],
  'stainless-347': [row(100, 16.6), row(315, 17.2), row(538, 18.6), row(650, 19.1)],
  'stainless-409': [row(100, 11.7), row(315, 12.0), row(538, 12.4), row(650, 12.8)],
  'titanium-2': [row(100, 8.6), row(315, 9.2), row(540, 9.7), row(650, 10.1)],
};

export type Expansion = {
  /** Mean from 20 °C, for each degree. */
  readonly mean: number;
  /** Whether every number that it was worked out from was read in a published sheet. */
  readonly isRead: boolean;
};

/** Between rows straight; beyond the first and the last as there. Undefined for a material that no table here knows. */
export function expansion(material: string, temperature: number): Expansion | undefined {
  const rows = TABLE[material];
  if (!rows) return undefined;
  const next = rows.findIndex((r) => r.to >= temperature);
  const [a, b] = next < 0 ? [rows.at(-1)!, rows.at(-1)!] : [rows[Math.max(0, next - 1)]!, rows[next]!];
  const t = b.to > a.to ? (temperature - a.to) / (b.to - a.to) : 0;
  const uses = [...(t < 1 ? [a] : []), ...(t > 0 ? [b] : [])];
  return { mean: a.mean * 1e-6 + t * (b.mean - a.mean) * 1e-6, isRead: uses.every((r) => r.source === 'read') };
}

/** Of the mean coefficients' reference, °C. */
export const REFERENCE_TEMPERATURE = 20;

/** How much longer a length is at a temperature than it was at another, mm. */
export const growth = (length: number, mean: number, from: number, to: number): number => length * mean * (to - from);
