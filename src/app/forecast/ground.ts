/**
 * What the page stands on in the browser: from the open design to engines and ways of gas, by the kernel's own readings. Each is
 * read once for a design; what cannot be read is a `DesignError` with its places.
 */
import { DesignError, type Refusal } from '../../../shared/design/refusal';
import type { Design, HeaderSketch, Valve } from '../../../shared/design/types';
import { sizingFromDesign } from '../../../shared/engine/sizing/fromDesign';
import { remembered } from '../../../shared/remember';
import { engineSetup } from '../../pulse/engine/setup';
import type { Assumed, EngineSetup, ValveSetup } from '../../pulse/engine/types';
import type { Subject as Read } from '../../pulse/forecast/curve';
import { speedsOf } from '../../pulse/forecast/speeds';
import { primaryTube, type StudySize, sketchOf, studySizes, usualArrangements } from '../../pulse/forecast/studySizes';
import { engineOf, subjectOf as subjectIn } from '../../pulse/forecast/subject';
import type { PathReading } from '../../pulse/path/reading';
import { sketchPath } from '../../pulse/path/sketch';
import { usualCast } from '../../pulse/path/usualCast';
import { equalised, withImbalance } from '../../pulse/path/variants';
import { headerOf } from '../derived';
import { eachOnce } from './assumed';
import { nameOf, UNEVEN } from './kinds';
import type { RunKind, Subject } from './runs';
import type { Ground } from './shown';
import { createCrew } from './team/crew';

export const engineFor = remembered(engineSetup);

const readIn = {
  header: remembered((design: Design) => subjectIn(design, 'header')),
  cast: remembered((design: Design) => subjectIn(design, 'cast')),
  sketch: remembered((design: Design) => subjectIn(design, 'sketch')),
};

export const sketched = (design: Design, sketch: HeaderSketch): PathReading => sketchPath(sketch, design);

/** Designs from the shelf that are followed beside the open one, by id, once they are read. */
const others = new Map<string, { readonly design: Design; readonly title: string }>();
export const lendOther = (id: string, design: Design, title: string): void => {
  others.set(id, { design, title });
};

const bar = (path: string, found: string, allowed: string): never => {
  throw new DesignError([{ path, found, allowed }]);
};

function subjectOf(kind: RunKind, design: Design): Subject {
  const named = (read: Read, title = nameOf(kind, [])): Subject => ({ ...read, kind, title });
  if (kind === 'header' || kind === 'cast' || kind === 'sketch') return named(readIn[kind](design));
  if (kind === 'equal') {
    const read = readIn.header(design);
    return named({ ...read, path: equalised(read.path) });
  }
  if (kind === 'uneven') {
    const read = readIn.header(design);
    if (read.engine.cylinders.length < 2)
      return bar('engine/cylinders', '1', 'two or more: one primary alone cannot differ from others');
    return named({ ...read, path: withImbalance(equalised(read.path), UNEVEN / 1000, read.engine.firingOrder) });
  }
  if (kind === 'arrangement') return named(joinedOtherwise(design));
  const other = others.get(kind.slice('other/'.length));
  if (!other)
    return bar('', 'a design that is not read yet', 'one that is on the shelf: leave it out and choose it again');
  return named(readIn.header(other.design), other.title);
}

/** The design's own lengths and bores as a sketch that is joined the other way. */
function joinedOtherwise(design: Design): Read {
  const { engine, assumed, notes } = engineOf(design);
  const [, arrangement] = usualArrangements(design);
  if (!arrangement)
    return bar(
      'engine/cylinders',
      String(engine.cylinders.length),
      'a number of cylinders that can be joined in more than one way',
    );
  const { path, assumed: also } = sketched(
    design,
    sketchOf(design, engine, { ...ownSize(design, engine), arrangement }),
  );
  const sketchNote = 'Lengths and bores stand for it: bends and places are not in it.';
  return { title: path.title, engine, path, assumed: [...assumed, ...also], notes: [sketchNote, ...notes] };
}

/** Valve to first join, mm, of every runner from a port that is laid out. */
export const primaryLengths = (design: Design): readonly number[] =>
  headerOf(design).runners.flatMap(({ runner, centerline, lengthInHead }) =>
    'port' in runner.from && centerline ? [lengthInHead + centerline.length] : [],
  );

/** What the primaries are: by the sketch, as they are laid out, else as the rules of thumb begin. */
function ownSize(design: Design, engine: EngineSetup): StudySize {
  const own = design.exhaust?.sketch;
  const arrangement = own?.arrangement ?? sizingFromDesign(design).input.arrangement ?? 'all-into-one';
  const lengths = primaryLengths(design);
  const tube = primaryTube(design);
  if (own)
    return { arrangement, length: own.primary.length, outsideDiameter: own.primary.bore + 3, wall: 1.5, outlet: null };
  if (lengths.length > 0 && tube) {
    const length = Math.round(lengths.reduce((sum, l) => sum + l, 0) / lengths.length);
    return { arrangement, length, outsideDiameter: tube.outsideDiameter, wall: tube.wall, outlet: null };
  }
  const sizes = studySizes(design, engine, { arrangements: [arrangement] });
  return sizes[sizes.length >> 1]!;
}

export const browserGround: Ground = {
  crew: createCrew,
  subjectOf,
  // Every run of one engine at the same speeds, so that they can be held beside each other.
  speedsOf: ({ engine }) => speedsOf(engine.speeds),
};

const orRefusals = <T>(read: () => T): T | readonly Refusal[] => {
  try {
    return read();
  } catch (error) {
    if (error instanceof DesignError) return error.problems;
    throw error;
  }
};

/** Why there is no engine to follow; empty where there is one. */
export const engineRefusals = remembered((design: Design): readonly Refusal[] => {
  const read = orRefusals(() => engineFor(design));
  return 'setup' in read ? [] : read;
});

/** What nobody gave, of the engine and of all that it may breathe through; each once. */
export const assumedOf = remembered((design: Design): readonly Assumed[] => {
  const all = [
    orRefusals(() => engineFor(design)),
    orRefusals(() => readIn.header(design)),
    orRefusals(() => readIn.cast(design)),
  ].flatMap((read) => ('assumed' in read ? read.assumed : []));
  const cast = orRefusals(() => usualCast(design));
  const ofCast = design.exhaust?.cast || !('assumed' in cast) ? [] : cast.assumed;
  return eachOnce([...ofCast, ...all]);
});

/** mm to a hundredth */
const millimetres = (metres: number): number => Math.round(metres * 1e5) / 100;

const valveFrom = ({ count, diameter, lifts }: ValveSetup): Valve => ({
  count,
  diameter: millimetres(diameter),
  lift: millimetres(Math.max(...lifts.map(([, lift]) => lift))),
  opens: lifts[0]![0],
  closes: lifts.at(-1)![0],
});

/** The numbers that stand for a part while nobody gives it: where whoever gives it starts. Null where there is no engine yet. */
export function usualPart(path: string, design: Design): object | null {
  const read = orRefusals((): object | null => {
    switch (path) {
      case 'engine/intakeValve':
        return valveFrom(engineFor(design).setup.intakeValve);
      case 'engine/exhaustValve':
        return valveFrom(engineFor(design).setup.exhaustValve);
      case 'exhaust/cast':
        return usualCast(design).cast;
      case 'exhaust/sketch': {
        const { setup } = engineFor(design);
        return sketchOf(design, setup, ownSize(design, setup));
      }
      case 'exhaust/tailpipe': {
        const way = orRefusals(() => readIn.header(design));
        const { path } = 'path' in way ? way : readIn.cast(design);
        const pipe = path.pipes.find(({ role }) => role === 'tailpipe');
        return pipe ? { length: millimetres(pipe.length), bore: millimetres(pipe.diameter.at(-1)![1]) } : null;
      }
      default:
        return null;
    }
  });
  return Array.isArray(read) ? null : read;
}
