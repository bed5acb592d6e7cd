/** A DXF file is pairs of lines, a group code and its value. Numbers always with a point, never an exponent or minus zero. */

export type Group = readonly [code: number, value: string];

/** Group codes that hold whole numbers, by the DXF reference; the others here are lengths, shares and text. */
export const whole = (code: number, value: number): Group => [code, String(value)];
export const text = (code: number, value: string): Group => [code, value];

/** Nine decimals: a millionth of what a laser can follow, and a bulge's arc to as much. */
const DECIMALS = 9;
/** Beyond this a double no longer holds them. */
const LARGEST = 1e6;

export function real(code: number, value: number): Group {
  if (!(Math.abs(value) <= LARGEST)) throw new RangeError(`A DXF file of ours cannot hold the number ${value}`);
  const [units, decimals] = value.toFixed(DECIMALS).split('.') as [string, string];
  const kept = decimals.replace(/0+$/, '');
  return [code, units === '-0' && kept === '' ? '0.0' : `${units}.${kept || '0'}`];
}

export const point = (code: number, x: number, y: number, z?: number): Group[] => [
  real(code, x),
  real(code + 10, y),
  ...(z === undefined ? [] : [real(code + 20, z)]),
];

export const section = (name: string, groups: readonly Group[]): Group[] => [
  text(0, 'SECTION'),
  text(2, name),
  ...groups,
  text(0, 'ENDSEC'),
];

export const variable = (name: string, ...values: Group[]): Group[] => [text(9, name), ...values];

/** Codes right-aligned to three places, as drawing programs write them; CRLF, as on the system the format comes from. */
export const toText = (groups: readonly Group[]): string =>
  groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
