/** Two runs beside each other: where the one gains most, where it loses most, in numbers and in one sentence. SI units; speeds in rpm. */
import type { Display } from '../../../shared/design/types';
import { areaUnder } from '../../pulse/forecast/curve';
import { numberText, signedText, wordsFor } from './quantities';
import { answerAt, type Run } from './runs';

export type Gain = {
  readonly rpm: number;
  /** N m, of the one over the other. */
  readonly torque: number;
  /** Of the other's torque. */
  readonly share: number;
  /** W */
  readonly power: number;
};

/** At every speed that both have an answer for, rising. */
export function gainsOf(run: Run, over: Run): readonly Gain[] {
  return run.speeds.flatMap((rpm) => {
    const [a, b] = [answerAt(run, rpm), answerAt(over, rpm)];
    if (!a || !b) return [];
    const torque = a.torque - b.torque;
    return [{ rpm, torque, share: b.torque === 0 ? 0 : torque / Math.abs(b.torque), power: a.power - b.power }];
  });
}

/** Differences below this are below what the method tells: a thousandth of the torque, to which a speed settles. */
export const TELLING = 0.001;

const best = (gains: readonly Gain[], sign: 1 | -1): Gain | null =>
  gains.reduce<Gain | null>((found, gain) => (!found || sign * gain.torque > sign * found.torque ? gain : found), null);

/** Most gained and most lost; null where there is nothing of the kind that would tell. */
export function extremes(gains: readonly Gain[]): { readonly most: Gain | null; readonly least: Gain | null } {
  const [high, low] = [best(gains, 1), best(gains, -1)];
  return {
    most: high && high.share > TELLING ? high : null,
    least: low && low.share < -TELLING ? low : null,
  };
}

/**
 * "On average from 2000 to 7600 rpm: +8.6 N m (+5.2 %)": the difference of the areas under both curves over its width. Null until all speeds are there.
 * @param all as for `gainWords`
 */
export function meanGainWords(run: Run, over: Run, display: Display, all: number): string | null {
  const gains = gainsOf(run, over);
  if (gains.length < 2 || gains.length < all) return null;
  const [low, high] = [gains[0]!.rpm, gains.at(-1)!.rpm];
  const mean = (of: (gain: Gain) => number): number =>
    areaUnder(
      gains.map((gain) => [gain.rpm, of(gain)]),
      [low, high],
    ) /
    (high - low);
  const [torque, base] = [mean((gain) => gain.torque), mean((gain) => answerAt(over, gain.rpm)!.torque)];
  const { unit, factor } = wordsFor('torque', display);
  return unbroken(
    `On average from ${low} to ${high} rpm: ${signedText(torque * factor, 1)} ${unit} (${signedText((torque / base) * 100, 1)} %).`,
  );
}

/** A number stays with its unit. */
const unbroken = (text: string): string => text.replaceAll(/ (?=rpm|N m|m\b|lb ft|ft\b|%)/g, '\u00a0');

/**
 * "gains most at 5000 rpm: +12.3 N m (+8.1 %); loses most at 3000 rpm: −2.0 N m (−1.4 %)", after the name of the run.
 * @param all speeds that both will have: while some are missing, nothing is said of the whole curve
 */
export function gainWords(gains: readonly Gain[], display: Display, all = gains.length): string {
  if (gains.length === 0) return 'cannot be compared yet: there is no speed that both were followed at';
  const { most, least } = extremes(gains);
  const { unit, factor } = wordsFor('torque', display);
  const isPart = gains.length < all;
  const soFar = isPart ? `so far, at ${gains.length} of ${all} speeds, ` : '';
  const none = isPart ? 'not yet seen to' : null;
  const say = ({ rpm, torque, share }: Gain) =>
    unbroken(`at ${rpm} rpm: ${signedText(torque * factor, 1)} ${unit} (${signedText(share * 100, 1)} %)`);
  if (!most && !least)
    return isPart
      ? `${soFar}differs by less than ${numberText(TELLING * 100, 1)} %`
      : `differs by less than ${numberText(TELLING * 100, 1)} % at every speed`;
  if (!least) return `${soFar}gains most ${say(most!)}; ${none ? `${none} lose` : 'loses nowhere'}`;
  if (!most) return `${soFar}${none ? `${none} gain` : 'gains nowhere'}; loses most ${say(least)}`;
  return `${soFar}gains most ${say(most)}; loses most ${say(least)}`;
}
