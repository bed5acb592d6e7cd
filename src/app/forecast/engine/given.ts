/** Single numbers of the engine and of what it breathes through: reading and setting them by their path, one step of history each. */
import { setBaseline, setFields } from '../../../../shared/design/edit';
import type { Refusal } from '../../../../shared/design/refusal';
import type { Baseline, Design } from '../../../../shared/design/types';
import type { Assumed } from '../../../pulse/engine/types';
import { applyEdit, refusalWords } from '../../inspect/applyEdit';
import { refusalLine } from '../refusalWords';

/** `engine/baseline/points/2` → its steps, numbers for rows. */
export const stepsOf = (path: string): (string | number)[] =>
  path.split('/').map((step) => (/^\d+$/.test(step) ? Number(step) : step));

export function valueAt(design: Design, path: string): unknown {
  return stepsOf(path).reduce<unknown>(
    (at, step) => (at === null || typeof at !== 'object' ? undefined : (at as Record<string | number, unknown>)[step]),
    design,
  );
}

export const numberAt = (design: Design, path: string): number | null => {
  const value = valueAt(design, path);
  return typeof value === 'number' ? value : null;
};

/** A refusal about the field itself as fields say it; about another place by that place's name. */
const namedWords = (refusal: Refusal, own?: string): string =>
  refusal.path === own ? refusalWords(refusal, own) : refusalLine(refusal);

/** @returns why not, or null where it was done. `undefined` takes it away */
export const setAt = (path: string, value: unknown, label: string): string | null =>
  applyEdit((design) => setFields(design, [[stepsOf(path), value]]), label, path, namedWords);

/** What was taken in its place, where nobody gave it: of it alone, or of the part that it is in. */
export function assumedFor(assumed: readonly Assumed[], path: string): Assumed | null {
  return assumed.find((a) => a.path === path) ?? null;
}

/** The number at the start of `136.5 mm`, percent as a share of 1; the words themselves where there is none. */
export function takenNumber(taken: string): number | string {
  const [, number, percent] = /^([−-]?\d+(?:\.\d+)?)(\s*%)?/.exec(taken) ?? [];
  if (number === undefined) return taken;
  return Number(number.replace('−', '-')) / (percent === undefined ? 1 : 100);
}

/** With the check of its unit against the engine's size. */
export const setBaselineTo = (baseline: Baseline | undefined, label: string): string | null =>
  applyEdit((design) => setBaseline(design, baseline), label, 'engine/baseline/points', namedWords);
