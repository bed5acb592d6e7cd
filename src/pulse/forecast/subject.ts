/** What of a design is followed: its engine on the header as laid out, on the cast manifold before it, or on a sketch of lengths and bores. */
import { DesignError, insist } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { engineSetup } from '../engine/setup';
import type { EngineSetup } from '../engine/types';
import { castPath } from '../path/cast';
import { coveredEngine } from '../path/coveredEngine';
import { cylindersOf } from '../path/engineOf';
import { laidOutPath } from '../path/laidOut';
import { coveredCylinders, type PathReading } from '../path/reading';
import { sketchPath } from '../path/sketch';
import type { Subject } from './curve';

export type SubjectKind = 'header' | 'cast' | 'sketch';

/**
 * `header` is the sketch where runners are not laid out and there is one.
 * @throws DesignError naming what the engine or the path lacks, with the remedies
 */
export function subjectOf(design: Design, which: SubjectKind): Subject {
  const { setup, assumed } = engineSetup(design);
  const { path, assumed: also } = readingOf(design, which);
  const { engine, note } = engineWith(setup, coveredCylinders(path));
  const isStandIn = which === 'header' && !isLaidOut(design);
  const notes = [
    ...(isStandIn ? ['Runners are not laid out yet: the sketch of lengths and bores stands for them.'] : []),
    ...(note === null ? [] : [note]),
  ];
  return { title: path.title, engine, path, assumed: [...assumed, ...also], notes };
}

export const isLaidOut = ({ runners }: Design): boolean =>
  runners.length > 0 && runners.every(({ points }) => points !== undefined);

function readingOf(design: Design, which: SubjectKind): PathReading {
  if (which === 'cast') return castPath(design);
  const { sketch } = design.exhaust ?? {};
  if (which === 'header' && isLaidOut(design)) return laidOutPath(design);
  if (sketch) return sketchPath(sketch, design);
  if (which === 'sketch')
    insist([
      {
        path: 'exhaust/sketch',
        found: 'nothing',
        allowed: 'lengths and bores of a header: arrangement, primary, collector',
      },
    ]);
  const unrouted = design.runners.filter(({ points }) => points === undefined).map(({ id }) => id);
  throw new DesignError([
    {
      path: unrouted.length === 0 ? 'runners' : `runners/${unrouted[0]}/points`,
      found: unrouted.length === 0 ? 'none' : `nothing: ${listed(unrouted)} not laid out`,
      allowed: `runners with points: ${unrouted.length === 0 ? 'draw a header' : 'lay them (evenrun route)'}; or lengths and bores in exhaust/sketch`,
    },
  ]);
}

function listed(ids: readonly string[]): string {
  const shown = ids.slice(0, 8).join(', ');
  return `${shown}${ids.length > 8 ? ` and ${ids.length - 8} more` : ''} ${ids.length === 1 ? 'is' : 'are'}`;
}

/** The engine with the cylinders of the path, and a sentence where these are not all. @throws DesignError naming ports of no cylinder */
function engineWith(
  setup: EngineSetup,
  covered: readonly number[],
): { readonly engine: EngineSetup; readonly note: string | null } {
  const strange = covered.filter((cylinder) => !setup.cylinders.includes(cylinder));
  if (strange.length > 0)
    insist([
      {
        path: 'ports',
        found: `cylinder ${strange.join(', ')}, none of the engine’s`,
        allowed: `cylinders ${setup.cylinders.join(', ')}`,
      },
    ]);
  const valves = covered.map((cylinder) => ({ cylinder, pipe: '', share: 1 }));
  const engine = coveredEngine(setup, { valves });
  const note =
    covered.length === setup.cylinders.length
      ? null
      : `Torque and power are of cylinders ${covered.join(', ')} alone: the design has no exhaust of the others.`;
  return { engine, note };
}

/** The engine for a study, which brings gas paths of its own: what is laid out or sketched does not matter. @throws DesignError */
export function engineOf(design: Design): Pick<Subject, 'engine' | 'assumed' | 'notes'> {
  const { setup, assumed } = engineSetup(design);
  const { engine, note } = engineWith(setup, cylindersOf(design));
  return { engine, assumed, notes: note === null ? [] : [note] };
}
