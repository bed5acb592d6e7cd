/** Seeded edits of many kinds on any design, each giving a new design that shares what it left alone: for fuzzing stores. */
import type { Design, Runner } from '../../shared/design/types';
import type { Vec3 } from '../../shared/vec3';
import type { Random } from '../random';

type Edit = (design: Design, random: Random) => Design;

const pick = <T>(list: readonly T[], random: Random): T => list[random.whole(0, list.length - 1)]!;

const nudged = (p: Vec3, random: Random): Vec3 => [
  p[0] + random.between(-20, 20),
  p[1] + random.between(-20, 20),
  p[2] + random.between(-20, 20),
];

function oneRunner(design: Design, random: Random, change: (runner: Runner) => Runner): Design {
  const at = random.whole(0, design.runners.length - 1);
  return { ...design, runners: design.runners.map((r, i) => (i === at ? change(r) : r)) };
}

const movePoint: Edit = (design, random) =>
  oneRunner(design, random, (r) => {
    const at = random.whole(0, (r.points?.length ?? 1) - 1);
    return r.points ? { ...r, points: r.points.map((p, i) => (i === at ? nudged(p, random) : p)) } : r;
  });

const moveAll: Edit = (design, random) => ({
  ...design,
  runners: design.runners.map((r) => (r.points ? { ...r, points: r.points.map((p) => nudged(p, random)) } : r)),
});

const addPoint: Edit = (design, random) =>
  oneRunner(design, random, (r) => {
    if (!r.points || r.points.length < 2 || r.points.length > 12) return r;
    const at = random.whole(1, r.points.length - 1);
    return { ...r, points: [...r.points.slice(0, at), nudged(r.points[at]!, random), ...r.points.slice(at)] };
  });

const removePoint: Edit = (design, random) =>
  oneRunner(design, random, (r) => {
    if (!r.points || r.points.length < 4) return r;
    const at = random.whole(1, r.points.length - 2);
    return { ...r, points: r.points.filter((_, i) => i !== at) };
  });

const movePort: Edit = (design, random) => {
  const at = random.whole(0, design.ports.length - 1);
  return {
    ...design,
    ports: design.ports.map((p, i) => (i === at ? { ...p, position: nudged(p.position, random) } : p)),
  };
};

const moveMerge: Edit = (design, random) => ({
  ...design,
  merges: design.merges.map((m) => ({ ...m, position: nudged(m.position, random) })),
});

const setLength: Edit = (design, random) => ({
  ...design,
  groups: Object.fromEntries(
    Object.entries(design.groups).map(([id, g]) => [
      id,
      { ...g, length: random() < 0.2 ? null : random.between(300, 900) },
    ]),
  ),
});

const addBox: Edit = (design, random) => ({
  ...design,
  surroundings: [
    ...(design.surroundings ?? []),
    {
      id: `box ${random.whole(0, 1e9)}`,
      shape: 'box',
      min: nudged([0, 0, 0], random),
      max: nudged([90, 90, 90], random),
    },
  ],
});

const removeSurrounding: Edit = (design, random) => {
  const gone = random.whole(0, (design.surroundings?.length ?? 1) - 1);
  return { ...design, surroundings: (design.surroundings ?? []).filter((_, i) => i !== gone) };
};

const lock: Edit = (design, random) => oneRunner(design, random, (r) => ({ ...r, locked: !r.locked }));

const rename: Edit = (design, random) => ({ ...design, title: `Tried ${random.whole(0, 1e6)}` });

/** A field that goes and comes back changes the order of keys, and so the bytes. */
const turnDisplay: Edit = (design) => {
  const { display, ...rest } = design;
  return { ...rest, display: display === 'in' ? 'mm' : 'in' };
};

/** −0 and 0 are written differently. */
const flipZero: Edit = (design) => ({
  ...design,
  clearance: { tubeToTube: Object.is(design.clearance?.tubeToTube, 0) ? -0 : 0 },
});

/** The same values in new objects: an edit that changes nothing. */
const copyOnly: Edit = (design) => structuredClone(design);

const EDITS: readonly Edit[] = [
  movePoint,
  moveAll,
  addPoint,
  removePoint,
  movePort,
  moveMerge,
  setLength,
  addBox,
  removeSurrounding,
  lock,
  rename,
  turnDisplay,
  flipZero,
  copyOnly,
];

export const randomEdit = (design: Design, random: Random): Design => pick(EDITS, random)(design, random);
