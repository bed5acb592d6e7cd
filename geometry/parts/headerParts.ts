/** Every part of a header, in the order of the gas, as far as the design lets them be made. Asynchronous: some kernels are loaded when needed. */
import { collectorParts } from '../collector/collectorParts';
import { flangeParts } from '../flange/flangeParts';
import type { Header } from '../header/resolve';
import { transitionParts } from '../transition/transitionParts';
import type { Made } from './part';
import { tubeParts } from './tubeParts';

export type PartProgress = { readonly done: number; readonly of: number; readonly what: string };

type Maker = { readonly what: string; readonly make: (header: Header) => Made | Promise<Made> };

const MAKERS: readonly Maker[] = [
  { what: 'flanges', make: flangeParts },
  { what: 'port transitions', make: transitionParts },
  { what: 'tubes', make: tubeParts },
  { what: 'collectors', make: collectorParts },
];

/** @param see told before each kind of part is made; what it throws ends the making */
export async function headerParts(header: Header, see: (progress: PartProgress) => unknown = () => {}): Promise<Made> {
  const made: Made[] = [];
  for (const [done, { what, make }] of MAKERS.entries()) {
    await see({ done, of: MAKERS.length, what });
    made.push(await make(header));
  }
  return {
    parts: made.flatMap((m) => m.parts),
    notMade: made.flatMap((m) => m.notMade),
    warnings: made.flatMap((m) => m.warnings),
  };
}
