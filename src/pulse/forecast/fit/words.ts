/** What a fit came to, in words for the one who measured. N m. */
import type { Fit } from '../fit';
import { BOUNDS, FACTORS, type Factor, SPREAD } from './factors';
import { NOISE } from './judge';

const NAMES: Readonly<Record<Factor, string>> = { flow: 'valve flow', friction: 'friction', heat: 'heat to the walls' };
/** Of the highest torque: a curve that stays as far off has another shape than three factors can give it. */
const FAR = 0.05;

/** Standard deviations from usual, of all factors together: of engines that differ so, each factor by itself, one in sixty is as far off. */
const UNLIKELY = 3.2;

/** What may be told wrongly where three factors are not enough. */
const ELSE = 'such as the unit of torque, the loss, the camshaft or the intake';

/**
 * Factors that all came to their bounds were held by nothing else; and where nothing is nearer than usual factors, and those are not near,
 * there is nothing found.
 */
export function failureOf({
  before,
  after,
  atBound,
  stopped,
  points,
}: Omit<Fit, 'message' | 'failure'>): string | null {
  if (atBound.length === FACTORS.length) return 'all three factors came to their bounds';
  const isNear = before <= NOISE * highestOf(points);
  return !stopped && after >= before && !isNear
    ? 'no factors within their bounds are nearer than the usual ones'
    : null;
}

const highestOf = (points: Fit['points']): number => Math.max(...points.map(({ torque }) => torque));

/** @param given how many points were measured. @param used how many could be followed */
export function fitWords(fit: Omit<Fit, 'message'>, given: number, used: number): string {
  const { fitted, before, after, atBound, untold, points, stopped, failure } = fit;
  const factors = FACTORS.map((factor) => `${NAMES[factor]} × ${fitted[factor].toFixed(2)}`).join(', ');
  const of = used < given ? `${used} of ${given} points` : `${given} points`;
  if (failure !== null)
    return [
      `Not fitted to ${of}: ${failure}.`,
      `Torque is off by ${after.toFixed(1)} N m (root mean square) at best, where it was ${before.toFixed(1)}.`,
      `Something else is another than told, ${ELSE}, or the shape of the curve is: look at what was bolted on too.`,
    ].join(' ');
  const words = [
    `${stopped ? 'Stopped; the best so far' : 'Fitted'} to ${of}: ${factors}.`,
    `At the measured speeds torque is off by about ${after.toFixed(1)} N m, where it was by ${before.toFixed(1)}: large misses count for more.`,
  ];
  for (const factor of atBound) {
    const { least, most } = BOUNDS[FACTORS.indexOf(factor)]!;
    const bound = fitted[factor] <= least ? `least, ${least}` : `most, ${most}`;
    words.push(`${capital(NAMES[factor])} came to its ${bound}: something else is another than told, ${ELSE}.`);
  }
  // In lb ft a curve is still that of a weak engine, which factors can make: all that can be said is that they are unlikely.
  const apart = FACTORS.reduce((sum, factor, k) => sum + ((fitted[factor] - 1) / SPREAD[k]!) ** 2, 0);
  if (apart > UNLIKELY ** 2)
    words.push(
      'Together these are far from usual: look whether the curve is in N m at the crank, as 1 lb ft is 1.3558 N m, and at the engine’s numbers.',
    );
  if (untold.length > 0)
    words.push(
      `The points tell little of ${untold.map((factor) => NAMES[factor]).join(' and ')}: what they cannot tell stays as usual.`,
    );
  if (after > FAR * highestOf(points))
    words.push('The shape of the curve is another: look at the camshaft, the intake and what was bolted on.');
  return words.join(' ');
}

const capital = (text: string): string => text[0]!.toUpperCase() + text.slice(1);
