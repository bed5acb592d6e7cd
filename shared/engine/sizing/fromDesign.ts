/** What a design says of the inputs to sizing: its engine, and how its first collector is joined. mm, rpm, crank degrees. */
import type { Design, Merge, Runner } from '../../design/types';
import type { Arrangement } from '../form';
import { sameAreaDiameter } from '../openingArea';
import type { SizingInput } from './input';
import { tunedSpeed } from './tunedSpeed';

export type DesignSizing = {
  readonly input: Partial<SizingInput>;
  /** The collector whose cylinders were counted; null: none. */
  readonly collector: string | null;
};

/** Whatever the design leaves open is absent. */
export function sizingFromDesign(design: Design): DesignSizing {
  const { engine = {} } = design;
  const last = design.merges.find((m) => !design.runners.some((r) => 'merge' in r.from && r.from.merge === m.id));
  const primaries = last ? primariesInto(design, last.id, []) : [];
  const first = primaries[0];
  const from = first?.from;
  const port = from && 'port' in from ? design.ports.find((p) => p.id === from.port) : undefined;
  const tube = first ? design.tubes[first.tube] : undefined;
  const input: Partial<SizingInput> = {
    ...(primaries.length > 0
      ? { cylinders: primaries.length }
      : engine.cylinders === undefined
        ? {}
        : { cylinders: engine.cylinders }),
    ...(last && first && first.to.merge !== last.id && arrangementOf(design.merges, first)),
    ...(engine.bore !== undefined && { bore: engine.bore }),
    ...(engine.stroke !== undefined && { stroke: engine.stroke }),
    ...(engine.rpm && { rpm: tunedSpeed(engine.rpm), topRpm: engine.rpm[1] }),
    ...(engine.exhaustValve && {
      exhaustOpens: engine.exhaustValve.opens,
      exhaustCloses: engine.exhaustValve.closes,
    }),
    ...(engine.intakeValve && { intakeOpens: engine.intakeValve.opens }),
    ...(port && { portDiameter: sameAreaDiameter(port.opening) }),
    ...(tube && { primaryBore: tube.outsideDiameter - 2 * tube.wall, wall: tube.wall }),
  };
  return { input, collector: last?.id ?? null };
}

/** Runners from ports that end in a merge, straight or through others. @param seen guards against a ring of merges */
function primariesInto(design: Design, merge: string, seen: readonly string[]): Runner[] {
  if (seen.includes(merge)) return [];
  return design.runners
    .filter((r) => r.to.merge === merge)
    .flatMap((r) => ('port' in r.from ? [r] : primariesInto(design, r.from.merge, [...seen, merge])));
}

/** Twos or threes first; any other number is no arrangement that a formula speaks of. */
function arrangementOf(merges: readonly Merge[], primary: Runner): { arrangement: Arrangement } | false {
  const joined = merges.find((m) => m.id === primary.to.merge)?.inlets;
  return joined === 2 ? { arrangement: 'pairs-then-one' } : joined === 3 ? { arrangement: 'threes-then-one' } : false;
}
