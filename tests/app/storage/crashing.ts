/**
 * A backend that dies at a chosen call, as a browser does when it is killed: the put under way is not made, made in part
 * (in one of several ways), or made whole without anyone hearing of it; every call after it fails.
 */
import { type Backend, memoryBackend } from '../../../src/app/storage/backend';

export class Crash extends Error {}

/** What a cut put leaves behind. `before` is what lay there. */
export const CUTS = {
  'not made': (before: unknown) => before,
  'made whole': (_: unknown, value: unknown) => value,
  empty: (_: unknown, value: unknown) => partOf(value, 0),
  'its head alone': (_: unknown, value: unknown) => partOf(value, 40),
  'all but its last': (_: unknown, value: unknown) => partOf(value, -1),
  'half of it': (_: unknown, value: unknown) => partOf(value, 0.5),
  'new on old': (before: unknown, value: unknown) => mixed(before, value),
} as const;

export type Cut = keyof typeof CUTS;

function partOf(value: unknown, part: number): unknown {
  if (typeof value !== 'string' && !(value instanceof Uint8Array)) return undefined;
  const end = Math.abs(part) < 1 ? Math.floor(value.length * part) : part;
  return value.slice(0, end);
}

/** The first half of the new over the old, as a disk written page by page may show it. */
function mixed(before: unknown, value: unknown): unknown {
  if (typeof before !== 'string' || typeof value !== 'string') return partOf(value, 0.5);
  const half = Math.floor(value.length / 2);
  return value.slice(0, half) + before.slice(half);
}

export type Crashing = Backend & { readonly calls: () => number };

/** @param at the call that it dies at, counted from 1; Infinity: never */
export function crashingBackend(values: Map<string, unknown>, at: number, cut: Cut): Crashing {
  const sound = memoryBackend(values);
  let calls = 0;
  const call = async <T>(work: () => Promise<T>, dying: () => void = () => {}): Promise<T> => {
    calls++;
    if (calls === at) dying();
    if (calls >= at) throw new Crash();
    return work();
  };
  return {
    calls: () => calls,
    get: (key) => call(() => sound.get(key)),
    put: (key, value) =>
      call(
        () => sound.put(key, value),
        () => {
          const left = CUTS[cut](values.get(key), value);
          if (left === undefined) values.delete(key);
          else values.set(key, left);
        },
      ),
    remove: (key) =>
      call(
        () => sound.remove(key),
        () => {
          if (cut === 'made whole') values.delete(key);
        },
      ),
    keys: (prefix) => call(() => sound.keys(prefix)),
  };
}
