/**
 * What is wrong with an engine form, by path, with what is allowed and how to mend it: first each number's bounds, then what
 * the fields owe each other. mm, degrees.
 */
import type { Refusal } from '../design/refusal';
import type { EngineForm } from './form';
import { formFields } from './formFields';
import { layoutRefusals } from './formLayout';
import { partRefusals } from './formParts';

/** Empty where a header can be drawn from the form. Expects the right shape: what the page holds, or `readForm` read. */
export function formProblems(form: EngineForm): Refusal[] {
  const bounds = boundRefusals(form, []);
  // A number out of bounds makes nonsense of what is derived from it: say that first.
  if (bounds.length > 0) return bounds;
  const parts = partRefusals(form);
  return parts.length > 0 ? parts : layoutRefusals(form);
}

function boundRefusals(value: unknown, path: readonly string[]): Refusal[] {
  if (typeof value === 'number') {
    const at = path.join('/');
    const field = formFields(at);
    if (!field) return Number.isFinite(value) ? [] : [{ path: at, found: String(value), allowed: 'a finite number' }];
    const { least, most, unit, whole, meaning } = field;
    // Written so that NaN fails.
    if (value >= least && value <= most && (!whole || Number.isInteger(value))) return [];
    const kind = whole ? 'a whole number' : 'a number';
    const allowed = `${kind} from ${least} to ${most}${unit && ` ${unit}`} (${meaning})`;
    return [{ path: at, found: String(value), allowed }];
  }
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, entry]) => boundRefusals(entry, [...path, key]));
}
