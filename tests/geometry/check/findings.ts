/** Findings of `check` and of the independent checker under one name each, so that they can be compared. */
import type { Problem } from '../../../geometry';
import type { CheckerProblem } from '../../layouts/recorded';

export type Finding = {
  readonly rule: string;
  /** Ids of what it is about. */
  readonly subjects: readonly string[];
  readonly found: number;
  readonly allowed: number;
  /** How far past its limit. */
  readonly past: number;
  readonly isGap: boolean;
};

const GAPS = new Set(['tube-to-tube', 'surroundings', 'merge-body', 'self']);
const HEADINGS = new Set(['runners', 'merges', 'surroundings']);
const idsIn = (where: string): string[] => where.split('/').filter((part) => !HEADINGS.has(part));

/** Bends are told apart by their angle, as the two number them differently; an end can have two findings, in order. */
function collect(list: readonly Finding[]): Map<string, Finding> {
  const found = new Map<string, Finding>();
  for (const finding of list) {
    const { rule, subjects } = finding;
    let key = `${rule} ${rule === 'angle' ? `${subjects[0]} ${finding.found.toFixed(2)}` : subjects.join(' | ')}`;
    while (found.has(key)) key += ' again';
    found.set(key, finding);
  }
  return found;
}

export const ofChecker = (problems: readonly CheckerProblem[]): Map<string, Finding> =>
  collect(
    problems.map(({ rule, where, found, allowed }): Finding => {
      const common = { rule, subjects: idsIn(where), isGap: GAPS.has(rule) };
      if (rule === 'placement' && typeof found !== 'number') {
        // A position against a box: how far outside it is.
        const [low, high] = allowed as unknown as readonly number[][];
        const off = Math.hypot(...found.map((x, k) => Math.max(0, low![k]! - x, x - high![k]!)));
        return { ...common, found: off, allowed: 0, past: off };
      }
      const value = found as number;
      if (rule === 'balance' && typeof allowed !== 'number') {
        const [length, tolerance] = allowed;
        return { ...common, found: value, allowed: length, past: Math.abs(value - length) - tolerance };
      }
      return { ...common, found: value, allowed: allowed as number, past: Math.abs(value - (allowed as number)) };
    }),
  );

/** The other thing is named in the message only. */
const OTHER: Record<string, RegExp> = {
  'tube-to-tube': /^Runners .+? and (.+?) (?:overlap|are )/,
  surroundings: /(?:into|close to) the (.+?)(?: at |:)/,
  'merge-body': /into (?:the |runner |collector )(.+?): move/,
};

export const findingsOf = (problems: readonly Problem[]): Map<string, Finding> =>
  collect(
    problems.map(({ rule, where, found, allowed, message }): Finding => {
      const other = OTHER[rule]?.exec(message)?.[1];
      const subjects = [...idsIn(where), ...(other ? [other] : [])];
      const common = { rule, subjects, found: Number(found), isGap: GAPS.has(rule) };
      if (Array.isArray(allowed)) {
        const [low, high] = allowed as unknown as readonly [number, number];
        return { ...common, allowed: (low + high) / 2, past: Math.max(low - Number(found), Number(found) - high) };
      }
      return { ...common, allowed: Number(allowed), past: Math.abs(Number(found) - Number(allowed)) };
    }),
  );
