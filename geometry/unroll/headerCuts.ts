/** Every cut of a header that is not square, unrolled, in the order of the gas. */
import type { Header } from '../header/resolve';
import { collectorCuts } from './collectorCuts';
import type { WrapCut } from './wrapCut';

/** Whoever shapes a part that is cut aslant adds its cuts here. */
const MAKERS: readonly ((header: Header) => readonly WrapCut[])[] = [collectorCuts];

export const headerCuts = (header: Header): WrapCut[] => MAKERS.flatMap((cutsOf) => cutsOf(header));
