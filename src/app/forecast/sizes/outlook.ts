/** How much a study will follow and about how long that takes here, told before it begins. */
import { spanText } from '../../../pulse/rig/outlook';

/** Followed on cells half as long, a speed takes as much longer: twice the cells, and twice the steps. */
const FINE_WORK = 4;
/** Sizes that are followed again on fine cells. */
const CHECKED = 3;

/**
 * s of one core for a speed on coarse cells, each cylinder. Measured on the four-cylinder examples on one ordinary core, 0.15; where
 * there is another machine it is put right by the first study.
 */
const GUESS = 0.15;

let measured: number | null = null;

type Pace = { readonly seconds: number; readonly runs: number; readonly cylinders: number };

/** A few runs tell too little: the first of each worker run code that is not compiled well yet. */
const ENOUGH = 12;

/** @param pace with all cores */
export function learnPace({ seconds, runs, cylinders }: Pace): void {
  if (runs >= ENOUGH && seconds > 0) measured = seconds / runs / cylinders;
}
export const forgetPace = (): void => {
  measured = null;
};

export type Ahead = {
  /** On coarse cells, and on fine ones after them. */
  readonly coarse: number;
  readonly fine: number;
  readonly known: number;
  /** "about 4 min"; a guess until a study was followed here. */
  readonly time: string;
  readonly isGuess: boolean;
};

/** @param known coarse runs that have an answer */
export function outlook(sizes: number, speeds: number, known: number, cylinders: number, cores: number): Ahead {
  const coarse = sizes * speeds - known;
  const fine = Math.min(CHECKED, sizes) * speeds;
  const each = measured ?? GUESS / Math.max(1, cores);
  const seconds = (coarse + FINE_WORK * fine) * each * cylinders;
  return { coarse, fine, known, time: spanText(seconds), isGuess: measured === null };
}
