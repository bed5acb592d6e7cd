/** How far lengths differ: a difference too small to print is said to be under what is printed, never to be nothing. */
import { MM_PER_INCH } from '../../../shared/units';
import { useDisplay } from '../actions/display';
import { Length } from './Length';

/** One of the last decimal shown, mm: four of a millimetre, five of an inch. */
const LEAST_SHOWN = { mm: 0.0001, in: 0.00001 * MM_PER_INCH } as const;

export function Spread({ mm }: { readonly mm: number }) {
  const least = LEAST_SHOWN[useDisplay()];
  return mm < least ? (
    <>
      under <Length mm={least} decimals={4} />
    </>
  ) : (
    <Length mm={mm} decimals={4} />
  );
}
