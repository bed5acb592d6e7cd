/** Waves that are followed back against time, met in its order: what runs alike at one place goes on as one. Crank degrees. */
import type { Direction } from './waveStation';

/** A wave at a place now, as part of what comes to the valve: what is still to be followed back. */
export type Past = {
  readonly pipe: string;
  readonly direction: Direction;
  readonly x: number;
  readonly angle: number;
  /** Pa at the valve for one of its X. */
  readonly weight: number;
  /** How far along the way it has been followed; −1: not beyond the first pipe's finish. */
  readonly reached: number;
  readonly taper: boolean;
  /** What it became a part of. */
  readonly later: Past | null;
};

/** What runs at one place within so many degrees is followed on as one. */
const ALIKE = 1;
/** Waves by time, the latest first; alike ones are one wave, which goes on as the heavier of them came. */
export function pastQueue(starts: readonly Past[]) {
  const slots = new Map<number, Map<string, Past>>();
  let slot = -Infinity;
  const add = (wave: Past): void => {
    const at = Math.floor(wave.angle / ALIKE);
    slot = Math.max(slot, at);
    const there = slots.get(at) ?? new Map<string, Past>();
    slots.set(at, there);
    const { pipe, direction, x, reached, taper } = wave;
    const key = `${pipe} ${direction} ${x} ${reached} ${taper}`;
    const same = there.get(key);
    there.set(key, same ? merged(same, wave) : wave);
  };
  for (const wave of starts) add(wave);
  return {
    add,
    next(): Past | null {
      for (; slots.size > 0; slot--) {
        const there = slots.get(slot);
        const first = there?.entries().next().value;
        if (!first) {
          slots.delete(slot);
          continue;
        }
        there!.delete(first[0]);
        return first[1];
      }
      return null;
    },
  };
}

function merged(a: Past, b: Past): Past {
  const [light, heavy] = [Math.abs(a.weight), Math.abs(b.weight)];
  const all = light + heavy;
  const angle = all > 0 ? (a.angle * light + b.angle * heavy) / all : a.angle;
  return { ...(light > heavy ? a : b), weight: a.weight + b.weight, angle };
}
