/**
 * What the parts of a header cost. The four tubes of an example, meshed by us and by a boundary-representation kernel at
 * one chord error, in turn in one run; then everything the shop gets of that header, first from nothing and then again.
 */
import {
  DEFAULT_CHORD_ERROR,
  headerParts,
  type Mesh,
  measureMesh,
  type ResolvedRunner,
  resolveHeader,
  triangleCount,
  tubeSolid,
  tubeVolume,
} from '../../geometry';
import { tubeParts } from '../../geometry/parts/tubeParts';
import type { Design } from '../../shared/design/types';
import { bendSchedule } from '../../src/shop/bendSchedule';
import { cutList } from '../../src/shop/cutList';
import { intersectionPoints } from '../../src/shop/intersectionPoints';
import { partsOf } from '../../src/shop/part';
import { shopFolder } from '../../src/shop/shopFolder';
import { startClocking } from '../../src/shop/startClocking';
import { free, loadOcct, type OcctShape, occtMesh, occtMeshing, occtSweep, occtVolume } from '../kernels/occt';
import { offSkin } from './offSkin';
import { spread } from './statistics';

/** Of each kernel, before anything counts: the first rounds run code that is not compiled yet. */
const WARMING = 3;
const ROUNDS = 9;
const FOLDERS = 3;

/** What is promised: so many times faster than the other kernel's meshing alone. */
const LEAST_RATIO = 20;
const FOLDER_MS = 6000;
const FIRST_MS = 1000;

type Line = NonNullable<ResolvedRunner['centerline']>;
type Tube = { readonly line: Line; readonly outsideDiameter: number; readonly wall: number };

export async function benchSolids(design: Design): Promise<string[]> {
  // First, while nothing of it is compiled: so a user meets it.
  const shop = await benchShop(design);
  return [...(await benchTubes(tubesOf(design))), ...shop];
}

const tubesOf = (design: Design): Tube[] =>
  resolveHeader(design).runners.flatMap(({ centerline: line, tube: { outsideDiameter, wall } }) =>
    line ? [{ line, outsideDiameter, wall }] : [],
  );

async function benchTubes(tubes: readonly Tube[]): Promise<string[]> {
  await loadOcct();
  const [ours, swept, both, meshed]: [number[], number[], number[], number[]] = [[], [], [], []];
  for (let round = 0; round < WARMING + ROUNDS; round++) {
    const own = timed(() => tubes.map((tube) => tubeSolid(tube.line, tube)));
    let shapes: OcctShape[] = [];
    const sweep = timed(() => (shapes = tubes.map(sweepOf)));
    const first = timed(() => meshAll(shapes));
    // The same shapes again: without what a first look at a shape costs.
    const again = timed(() => meshAll(shapes));
    free(...shapes);
    if (round < WARMING) continue;
    ours.push(own);
    swept.push(sweep);
    both.push(sweep + first);
    meshed.push(again);
  }
  const [a, b, c, d] = [ours, meshed, both, swept].map(spread) as [Spread, Spread, Spread, Spread];
  const ratio = b.least / a.least;
  return [
    `solids     ${tubes.length} tubes at ${DEFAULT_CHORD_ERROR} mm chord error, ${ROUNDS} rounds in turn after ${WARMING} that do not count`,
    `           ours, swept and meshed      ${inMs(a)}`,
    `           B-rep, meshing alone        ${inMs(b)}   ${ratio.toFixed(1)} times ours: ${verdict(ratio >= LEAST_RATIO, `at least ${LEAST_RATIO}`)}`,
    `           B-rep, sweeping alone       ${inMs(d)}`,
    `           B-rep, swept and meshed     ${inMs(c)}   ${(c.least / a.least).toFixed(1)} times ours`,
    ...quality(tubes),
  ];
}

type Spread = ReturnType<typeof spread>;
const inMs = ({ least, median, greatest }: Spread): string =>
  `least ${least.toFixed(2)}  median ${median.toFixed(2)}  greatest ${greatest.toFixed(2)} ms`;

/** A promise that is broken makes the run fail. */
function verdict(holds: boolean, promise: string): string {
  if (!holds) process.exitCode = 1;
  return `${promise} ${holds ? 'holds' : 'IS MISSED'}`;
}

const sweepOf = ({ line, outsideDiameter, wall }: Tube): OcctShape =>
  occtSweep(line, outsideDiameter / 2, outsideDiameter / 2 - wall);

function meshAll(shapes: readonly OcctShape[]): void {
  for (const shape of shapes) occtMeshing(shape, DEFAULT_CHORD_ERROR);
}

/** A faster mesh that is worse is not faster: triangles, volumes and what is measured of the chord error. */
function quality(tubes: readonly Tube[]): string[] {
  const own = tubes.map((tube) => tubeSolid(tube.line, tube));
  const shapes = tubes.map(sweepOf);
  const theirs = shapes.map((shape) => occtMesh(shape, DEFAULT_CHORD_ERROR));
  const exact = sum(shapes.map(occtVolume));
  free(...shapes);
  const truth = sum(tubes.map((tube) => tubeVolume(tube.line, tube)));
  const described = (meshes: readonly Mesh[]): string => {
    const volume = sum(meshes.map((mesh) => measureMesh(mesh).volume));
    const off = meshes.map((mesh, i) => {
      const { line, outsideDiameter, wall } = tubes[i]!;
      return offSkin(mesh, line, outsideDiameter / 2, outsideDiameter / 2 - wall);
    });
    const lost = 100 * (volume / truth - 1);
    return `${sum(meshes.map(triangleCount))} triangles, volume ${volume.toFixed(1)} mm³ (${lost.toFixed(3)} %), chord error measured ${Math.max(...off).toFixed(4)} mm`;
  };
  return [
    `           ours   ${described(own)}`,
    `           B-rep  ${described(theirs)}`,
    `           true volume ${truth.toFixed(1)} mm³; the B-rep's own before meshing ${exact.toFixed(1)} mm³`,
  ];
}

async function benchShop(design: Design): Promise<string[]> {
  const early = timed(() => {
    const header = resolveHeader(design);
    const { parts } = partsOf(header);
    const tables = [bendSchedule(parts), startClocking(parts), intersectionPoints(parts), cutList(parts).text];
    if (tables.some((text) => text.length === 0)) throw new Error('A table is empty.');
    return tubeParts(header);
  });
  const started = performance.now();
  const made = await headerParts(resolveHeader(design));
  const all = performance.now() - started;
  const times: number[] = [];
  let files = 0;
  let bytes = 0;
  for (let k = 0; k <= FOLDERS; k++) {
    const start = performance.now();
    const folder = await shopFolder(design);
    times.push(performance.now() - start);
    files = folder.files.length;
    bytes = sum(folder.files.map((file) => file.bytes.length));
  }
  const [first, ...again] = times as [number, ...number[]];
  const kinds = new Map<string, number>();
  for (const { kind } of made.parts) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  const counted = [...kinds].map(([kind, count]) => `${count} ${kind}`).join(', ');
  return [
    `shop       tables and tubes ${early.toFixed(0)} ms from nothing: ${verdict(early < FIRST_MS, 'the first second')}`,
    `           every part (${counted}; ${made.notMade.length} not made) ${all.toFixed(0)} ms`,
    `           the whole folder ${first.toFixed(0)} ms at first, then ${inMs(spread(again))}: ${verdict(first < FOLDER_MS, `${FOLDER_MS / 1000} s`)}; ${files} files, ${(bytes / 1e6).toFixed(1)} MB`,
  ];
}

function timed(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, x) => total + x, 0);
