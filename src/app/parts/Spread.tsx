/** How far lengths differ: a difference too small to print is said to be under what is printed, never to be nothing. */
import { Length } from './Length';

/** Four decimals of a millimetre are shown. */
const LEAST_SHOWN = 0.0001;

export function Spread({ mm }: { readonly mm: number }) {
  return mm < LEAST_SHOWN ? (
    <>
      under <Length mm={LEAST_SHOWN} decimals={4} />
    </>
  ) : (
    <Length mm={mm} decimals={4} />
  );
}
