/** The engine of a design that gets a bank more: it grows where the cylinders opposite are none of those it had. */

import { insist } from '../../shared/design/refusal';
import type { Design, Engine } from '../../shared/design/types';
import { type Opposite, placeOf } from './mirrorCylinders';

/** @throws DesignError where a number would be left out */
export function grownEngine(design: Design, opposite: Opposite): Engine | undefined {
  const { engine } = design;
  const had = engine?.cylinders;
  if (!engine || had === undefined) return engine;
  const beyond = [...opposite].filter(([, to]) => to > had);
  if (beyond.length === 0) return engine;
  // As many as are new, so all of them where none lies beyond this.
  const cylinders = had + beyond.length;
  insist(
    beyond
      .filter(([, to]) => to > cylinders)
      .map(([c, to]) => ({
        path: placeOf(design, c),
        found: `cylinder ${to} opposite`,
        allowed: `a cylinder from 1 to ${cylinders}, so that no number is left out`,
      })),
  );
  // The order in which a whole engine fires does not follow from half of it.
  const { firingOrder: _, banks: before, ...rest } = engine;
  const own = before ?? [[...opposite.keys()]];
  const images = own.map((bank) => bank.flatMap((c) => opposite.get(c) ?? []));
  const banks = [...own, ...images].filter((bank) => bank.length > 0);
  const named = banks.flat();
  const whole = named.length === cylinders && new Set(named).size === cylinders;
  return { ...rest, cylinders, ...(whole ? { banks } : {}) };
}

const COUNTS = ['no', 'one', 'two', 'three', 'four'];

/**
 * What mirroring did to the engine, for whoever asked for it; null where it is as it was.
 * @param when `then`: it is not done yet
 */
export function engineWords(before: Design, after: Design, when: 'now' | 'then' = 'now'): string | null {
  const [was, is] = [before.engine, after.engine];
  if (!is || was?.cylinders === is.cylinders) return null;
  const banks = is.banks ? `, in ${COUNTS[is.banks.length] ?? is.banks.length} banks` : '';
  const gone = [was?.banks && !is.banks ? 'banks' : '', was?.firingOrder ? 'firing order' : ''].filter((x) => x !== '');
  const verb = gone.length === 1 && gone[0] === 'firing order' ? 'is' : 'are';
  const left = gone.length > 0 ? `; its ${gone.join(' and ')} ${verb} left out: type the whole engine’s` : '';
  const has = when === 'now' ? `has ${is.cylinders} cylinders now` : `then has ${is.cylinders} cylinders`;
  return `The engine ${has}${banks}${left}.`;
}
