/**
 * A first walk over any value, before its shape is known: is it plain, finite data of a sane size? Later stages and the
 * kernel may then recurse, index and multiply without care.
 */
import { pathOf } from './ids';
import { MAX_DEPTH, MAX_VALUES } from './limits';
import { describe, type Refusal } from './refusal';

export function survey(document: unknown): Refusal[] {
  const problems: Refusal[] = [];
  const path: (string | number)[] = [];
  let values = 0;
  const refuse = (found: string, allowed: string): void => {
    problems.push({ path: pathOf(document, path), found, allowed });
  };

  /** False once the document is too large to go on. */
  const walk = (value: unknown): boolean => {
    if (++values > MAX_VALUES) {
      problems.push({ path: 'document', found: `more than ${MAX_VALUES} values`, allowed: `at most ${MAX_VALUES}` });
      return false;
    }
    if (typeof value === 'number' && !Number.isFinite(value)) refuse(describe(value), 'a finite number');
    if (['function', 'symbol', 'bigint'].includes(typeof value)) refuse(describe(value), 'plain data');
    if (value === null || typeof value !== 'object') return true;
    if (path.length >= MAX_DEPTH) {
      refuse('a deeper level', `at most ${MAX_DEPTH} levels`);
      return false;
    }
    if (Array.isArray(value)) return value.every((entry, i) => step(i, entry));
    const prototype: unknown = Object.getPrototypeOf(value);
    if (prototype !== Object.prototype && prototype !== null) {
      refuse('an object of a class', 'plain data');
      return true;
    }
    return Object.keys(value).every((key) =>
      step(key, key === '__proto__' ? forbidden : (value as Record<string, unknown>)[key]),
    );
  };

  const step = (key: string | number, value: unknown): boolean => {
    path.push(key);
    const goOn = value === forbidden ? true : walk(value);
    if (value === forbidden) refuse('this name', 'any other name');
    path.pop();
    return goOn;
  };

  walk(document);
  return problems;
}

const forbidden = Symbol('__proto__');
