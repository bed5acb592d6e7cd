/** The cylinders that a sketch or a cast manifold is of, bank by bank, and what of the head lies before them. SI units. */
import type { Refusal } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { sameAreaDiameter } from '../../../shared/engine/openingArea';
import { usualEngine } from '../../../shared/engine/usualEngines';
import type { Assumed } from '../engine/types';
import { metres } from './metres';
import { type HeadPart, inHead, portInHead, throatDiameter } from './port';

/** mm: valve seat to the head's face where there are no ports. Common practice, as of a new header. */
const USUAL_LENGTH_IN_HEAD = 80;

/** Those whose ports the design has, so that all paths of a design are of the same ones; without ports, all of the engine's. */
export function cylindersOf({ engine = {}, ports }: Design): number[] {
  const { cylinders, firingOrder, banks } = engine;
  const ofEngine = cylinders === undefined ? (firingOrder ?? banks?.flat() ?? []) : upTo(cylinders);
  const numbers = ports.length > 0 ? ports.map(({ cylinder }) => cylinder) : ofEngine;
  return [...new Set(numbers)].sort((a, b) => a - b);
}

const upTo = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);

export const cylinderProblems = (design: Design): Refusal[] =>
  cylindersOf(design).length > 0
    ? []
    : [{ path: 'engine/cylinders', found: 'nothing', allowed: 'how many cylinders the engine has, or its ports' }];

/** From one end of each bank to the other. Where the design is silent, the usual banks; cylinders that no bank names are one more. */
export function banksOf(design: Design): number[][] {
  const cylinders = cylindersOf(design);
  const named = (design.engine?.banks ?? usualBanks(design) ?? []).map((bank) =>
    bank.filter((c) => cylinders.includes(c)),
  );
  const rest = cylinders.filter((c) => !named.flat().includes(c));
  return [...named, rest].filter((bank) => bank.length > 0);
}

/** As a new header's: two banks from eight cylinders on. Null where one bank is usual, or nothing is. */
function usualBanks(design: Design): readonly (readonly number[])[] | null {
  const count = design.engine?.cylinders ?? cylindersOf(design).length;
  return count < 8 ? null : (usualEngine(count, 2)?.banks ?? null);
}

/** What a sketch or a casting takes of an engine that is silent about it. */
export function headAssumed(design: Design): Assumed[] {
  const usual = design.engine?.banks ? null : usualBanks(design);
  return [
    ...(usual
      ? [
          {
            path: 'engine/banks',
            name: 'Banks',
            taken: usual.map((bank) => bank.join('-')).join(' | '),
            why: 'Usual numbering; it differs between engines',
          },
        ]
      : []),
    ...(design.ports.length > 0
      ? []
      : [
          {
            path: 'ports',
            name: 'Port in the head',
            taken: `${USUAL_LENGTH_IN_HEAD} mm from the valve seat to the head's face`,
            why: 'Common practice; the design has no ports',
          },
        ]),
  ];
}

/** A pipe for each port of the cylinder, one where there are none; together they have its valves. */
export const pipesOf = ({ ports }: Design, cylinder: number): number =>
  Math.max(1, ports.filter((port) => port.cylinder === cylinder).length);

export const mean = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0) / numbers.length;

/** mm, of the longest. */
export const longestInHead = ({ ports }: Design): number =>
  ports.length > 0 ? Math.max(...ports.map(({ lengthInHead }) => lengthInHead ?? 0)) : USUAL_LENGTH_IN_HEAD;

/** mm, of round holes as large as the ports; null without ports. */
export const usualOpening = ({ ports }: Design): number | null =>
  ports.length > 0 ? mean(ports.map(({ opening }) => sameAreaDiameter(opening))) : null;

/**
 * Of the cylinder's k-th pipe: its own port's, as of a header that is laid out; the usual one where the design has no ports.
 * @param bore m, of the tube, which opens the port where none is given
 */
export function headOf(design: Design, cylinder: number, k: number, bore: number): HeadPart {
  const port = design.ports.filter((one) => one.cylinder === cylinder)[k];
  if (port) return portInHead(design, port);
  return inHead(metres(USUAL_LENGTH_IN_HEAD), bore, throatDiameter(design, cylinder));
}
