/** Edits of the engine that touch each other: how many cylinders, which bank each is in, and the order they fire in. */
import type { Design, Engine } from '../types';
import { checked, type Edited } from './edited';

/**
 * Sets the number of cylinders. Banks lose the numbers that are gone and the last one takes the new ones; a firing order
 * of another number of cylinders is no longer one, and is taken away; so are the angles at which they fire.
 */
export function setCylinders(design: Design, cylinders: number): Edited {
  const { firingOrder, firingAngles, banks, ...rest } = design.engine ?? {};
  const engine: Engine = {
    ...rest,
    cylinders,
    ...(banks && { banks: banksFor(banks, cylinders) }),
    ...(firingOrder && firingOrder.length === cylinders && { firingOrder }),
    ...(firingAngles && firingAngles.length === cylinders && { firingAngles }),
  };
  return checked({ ...design, engine });
}

function banksFor(banks: readonly (readonly number[])[], cylinders: number): number[][] {
  const kept = banks.map((bank) => bank.filter((n) => n <= cylinders));
  const missing = Array.from({ length: Math.min(cylinders, 64) }, (_, i) => i + 1).filter(
    (n) => !kept.flat().includes(n),
  );
  return kept
    .map((bank, i) => (i === kept.length - 1 ? [...bank, ...missing] : bank))
    .filter((bank) => bank.length > 0);
}

/** Sets the firing order; one that names every cylinder of another count sets that count too. */
export function setFiringOrder(design: Design, firingOrder: readonly number[]): Edited {
  const complete = firingOrder.length > 0 && [...firingOrder].sort((a, b) => a - b).every((n, i) => n === i + 1);
  const started = complete ? setCylinders(design, firingOrder.length) : { ok: true as const, design };
  if (!started.ok) return started;
  const { firingAngles, ...rest } = started.design.engine ?? {};
  const kept = firingAngles?.length === firingOrder.length ? { firingAngles } : {};
  return checked({ ...started.design, engine: { ...rest, ...kept, firingOrder } });
}

/** `1-3-4-2`, `1 3 4 2` or `1,3,4,2` as numbers; null where it is something else. */
export function readCylinders(text: string): number[] | null {
  const parts = text.trim().split(/[\s,;·–-]+/);
  const numbers = parts.map(Number);
  return text.trim() !== '' && parts.every((part) => /^\d+$/.test(part)) ? numbers : null;
}

export const writeCylinders = (numbers: readonly number[]): string => numbers.join('-');

/** Banks as people write them: `1-2-3-4 | 5-6-7-8`. */
export function readBanks(text: string): number[][] | null {
  const banks = text.split(/[|/]/).map(readCylinders);
  return banks.every((bank) => bank !== null) ? (banks as number[][]) : null;
}

export const writeBanks = (banks: readonly (readonly number[])[]): string => banks.map(writeCylinders).join(' | ');
