/** Which cylinders are mirrored and which numbers their images get: as said, or by the engine's two banks. */
import { MAX_CYLINDERS } from '../../shared/design/limits';
import { DesignError, describe, insist, type Refusal } from '../../shared/design/refusal';
import type { Design } from '../../shared/design/types';

export type Opposite = ReadonlyMap<number, number>;

/** @param bank from 1; default: every cylinder that has a port */
export function chosenCylinders(design: Design, bank?: number): readonly number[] {
  const withPort = design.ports.map((p) => p.cylinder);
  if (bank === undefined) return withPort;
  const banks = design.engine?.banks ?? [];
  const found = banks[bank - 1];
  if (!found) {
    const allowed = banks.length > 0 ? `one of 1 to ${banks.length}` : 'banks in the engine first';
    throw new DesignError([{ path: 'engine/banks', found: `no bank ${bank}`, allowed }]);
  }
  const cylinders = found.filter((c) => withPort.includes(c));
  if (cylinders.length === 0)
    insist([{ path: `engine/banks/${bank - 1}`, found: 'no port of its cylinders', allowed: 'a bank that has ports' }]);
  return cylinders;
}

/** In the engine's other bank, at the same place; undefined where there are not two banks. */
function inOtherBank({ engine }: Design, cylinder: number): number | undefined {
  const banks = engine?.banks ?? [];
  const own = banks.findIndex((bank) => bank.includes(cylinder));
  return banks.length === 2 && own >= 0 ? banks[1 - own]![banks[own]!.indexOf(cylinder)] : undefined;
}

/** @param cylinders as said; a cylinder not among them goes by the engine's banks */
export function oppositeOf(design: Design, chosen: readonly number[], cylinders?: Opposite): Opposite {
  const taken = new Map(design.ports.map((p) => [p.cylinder, p.id]));
  const opposite = new Map<number, number>();
  const problems: Refusal[] = [];
  for (const c of new Set(chosen)) {
    const to = cylinders?.get(c) ?? inOtherBank(design, c);
    const again = [...opposite].find(([, other]) => other === to);
    const refuse = (found: string, allowed: string) => problems.push({ path: placeOf(design, c), found, allowed });
    if (to === undefined)
      refuse(
        `${c}, with no cylinder opposite`,
        'two banks in the engine, as long as each other, or the cylinder opposite said',
      );
    else if (!Number.isInteger(to) || to < 1 || to > MAX_CYLINDERS)
      refuse(`cylinder ${to} opposite`, `a whole number from 1 to ${MAX_CYLINDERS}`);
    else if (taken.has(to))
      refuse(
        `cylinder ${to} opposite, which has port ${describe(taken.get(to))}`,
        'a cylinder without a port; remove that one, or name another',
      );
    else if (again) refuse(`cylinder ${to} opposite, as for cylinder ${again[0]}`, 'another cylinder for each');
    else opposite.set(c, to);
  }
  insist(problems);
  return opposite;
}

/** Where a cylinder's number stands in the design: at its port. */
export const placeOf = ({ ports }: Design, cylinder: number): string =>
  `ports/${ports.find((p) => p.cylinder === cylinder)!.id}/cylinder`;

/**
 * To start from where nobody has said: by the engine's two banks as far as those are free, else the numbers that follow
 * the engine's.
 */
export function usualOpposite(design: Design, chosen: readonly number[]): Opposite {
  const taken = new Set(design.ports.map((p) => p.cylinder));
  const others = new Map(chosen.map((c) => [c, inOtherBank(design, c)]));
  if ([...others.values()].every((to) => to !== undefined && !taken.has(to))) return others as Map<number, number>;
  const last = Math.max(design.engine?.cylinders ?? 0, ...taken);
  return new Map([...others.keys()].map((c, i) => [c, last + 1 + i]));
}
