/** What a fit came to, in words for the one who measured. N m. */
import type { Fit } from '../fit';
import { BOUNDS, FACTORS, type Factor } from './factors';

const NAMES: Readonly<Record<Factor, string>> = { flow: 'valve flow', friction: 'friction', heat: 'heat to the walls' };
/** Of the highest torque: a curve that stays as far off has another shape than three factors can give it. */
const FAR = 0.05;

/** @param given how many points were measured. @param used how many could be followed */
export function fitWords(fit: Omit<Fit, 'message'>, given: number, used: number): string {
  const { fitted, before, after, atBound, untold, points, stopped } = fit;
  const factors = FACTORS.map((factor) => `${NAMES[factor]} × ${fitted[factor].toFixed(2)}`).join(', ');
  const of = used < given ? `${used} of ${given} points` : `${given} points`;
  const words = [
    `${stopped ? 'Stopped; the best so far' : 'Fitted'} to ${of}: ${factors}.`,
    `At the measured speeds torque is off by about ${after.toFixed(1)} N m, where it was by ${before.toFixed(1)}: large misses count for more.`,
  ];
  for (const factor of atBound) {
    const { least, most } = BOUNDS[FACTORS.indexOf(factor)]!;
    const bound = fitted[factor] <= least ? `least, ${least}` : `most, ${most}`;
    words.push(
      `${capital(NAMES[factor])} came to its ${bound}: something else is another than told, such as the unit of torque, the loss, the camshaft or the intake.`,
    );
  }
  if (untold.length > 0)
    words.push(
      `The points tell little of ${untold.map((factor) => NAMES[factor]).join(' and ')}: what they cannot tell stays as usual.`,
    );
  const highest = Math.max(...points.map(({ torque }) => torque));
  if (after > FAR * highest)
    words.push('The shape of the curve is another: look at the camshaft, the intake and what was bolted on.');
  return words.join(' ');
}

const capital = (text: string): string => text[0]!.toUpperCase() + text.slice(1);
