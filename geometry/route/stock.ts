/**
 * Shapes that each runner could have by itself, between given places at a given length: drawn once, made to hold their own
 * rules, and kept for all rounds of a search. Each depends on the seed and on what it is for alone, so that it does not
 * matter which round asks first. What cannot hold by itself cannot hold in company: this is what tells inlets and bend
 * counts apart before anything is laid together.
 */
import type { Design } from '../../shared/design/types';
import { randomNumbers } from '../layout/random';
import { alone, stillHeader } from './alone';
import { type Crowds, crowds } from './combine';
import type { Barrier } from './crowd';
import { drawnLengths, knownLengths } from './lengths';
import { propose } from './propose';
import { pathOf, type Sketch, sketched } from './sketch';
import { barriersOf, bundlesOf, endOf, type Stage, stageOf, startOf } from './stage';
import type { RunnerTask, Task } from './task';

/** Of one set of places and lengths. */
export type Shelf = {
  readonly stage: Stage;
  /** A drawing to begin with, in which tubes may still pass through each other. */
  readonly drawn: Design | null;
  readonly crowd: Crowds;
  readonly lengthOf: (r: RunnerTask) => number | null;
  /** Shapes of runner r into an inlet, those of fewest bends and least turning first; deeper asks know more of them. */
  shapes(r: RunnerTask, inlet: number, depth: number): readonly Sketch[];
};

/** Lengths tried, of the shortest that all can have; finely near it, where the fewest bends are found. The first is tried first. */
export const STRETCHES = [1.02, 1.005, 1.035, 1.05, 1.07, 1.09, 1.12, 1.16];
/** The same, as many, where lengths were found beforehand. */
const STRETCHED = [1.005, 1.02, 1.04, 1.06, 1.08, 1.1, 1.15, 1.2];
export const PLACES = 24;

/** Draws of each number of points, and how many of the best are made to hold. */
const DRAWS = [24, 60, 60, 60];
const TRIED = [5, 8, 8, 8];
/** At the first look so many that hold are enough, and so many that do not tell that this number of points will not. */
const AT_FIRST = { held: 3, failed: 4 };
const STEPS = 16;
const STAGES = 8;
/** More obstructed than this is no worse, mm². */
const HEAVY = 10000;
/** Shapes whose places lie no farther apart than this are one, mm. */
const SAME = 12;

export type Stock = { shelf(place: number, stretch: number, stopped: () => boolean): Shelf };

/** Where collectors stand and how long groups are for a number of places, as found beforehand; null where nothing was. */
export type Beforehand = (
  place: number,
  stopped: () => boolean,
) => { readonly stage: Stage; readonly lengths: ReadonlyMap<string, number>; readonly drawn: Design } | null;

export function stockOf(task: Task, seed: number, beforehand: Beforehand = () => null): Stock {
  const shelves = new Map<string, Shelf>();
  const stages = new Map<number, Stage>();
  return {
    shelf(place, stretch, stopped) {
      const key = `${place}/${stretch}`;
      let shelf = shelves.get(key);
      if (!shelf) {
        const random = randomNumbers(mixed(seed, place, 0, 0, 0));
        const found = beforehand(place, stopped);
        const stage = found?.stage ?? stages.get(place) ?? likelyStage(task, place === 0 ? 0 : random(), random);
        stages.set(place, stage);
        const own = mixed(seed, place, stretch, 1, 0);
        const lengthOf = found
          ? knownLengths(task, found.lengths, STRETCHED[stretch]!)
          : drawnLengths(task, stage, STRETCHES[stretch]!, randomNumbers(own));
        shelf = shelfOf(task, stage, lengthOf, found?.drawn ?? null, own);
        if (!stopped()) shelves.set(key, shelf);
      }
      return shelf;
    },
  };
}

/** Of a few sets of places the one where runners have most room by a first look. */
function likelyStage(task: Task, spread: number, random: () => number): Stage {
  const tries = Array.from({ length: task.movable.length > 0 ? STAGES : 1 }, (_, k) =>
    stageOf(task, k === 0 ? spread : 1, random),
  );
  if (tries.length === 1) return tries[0]!;
  const rated = tries.map((stage) => {
    const lengthOf = drawnLengths(task, stage, STRETCHES[0]!, random);
    const cost = task.runners.reduce((sum, r) => {
      if (r.locked) return sum;
      const barriers = barriersOf(task, stage, r);
      const inlet = r.pinnedInlet ?? 1 + (r.index % stage.header.merges.get(r.merge)!.inlets.length);
      const shapes = [2, 3].flatMap((points) => rough(stage, r, inlet, points, lengthOf(r), barriers, random, 10, 1));
      return sum + Math.sqrt(Math.min(HEAVY, ...shapes.map((s) => s.blocked)));
    }, 0);
    return { stage, cost };
  });
  return rated.reduce((best, one) => (one.cost < best.cost ? one : best)).stage;
}

function shelfOf(
  task: Task,
  stage: Stage,
  lengthOf: (r: RunnerTask) => number | null,
  drawn: Design | null,
  seed: number,
): Shelf {
  const still = stillHeader(stage.header);
  const barriers = new Map<number, readonly Barrier[]>();
  const known = new Map<string, Sketch[]>();
  const own = (r: RunnerTask): readonly Barrier[] => {
    const kept = barriers.get(r.index) ?? barriersOf(task, stage, r);
    barriers.set(r.index, kept);
    return kept;
  };
  const shelf: Shelf = {
    stage,
    drawn,
    crowd: crowds(task.header.tubeToTube),
    lengthOf,
    shapes(r, inlet, depth) {
      const key = `${r.index}/${inlet}/${depth}`;
      let found = known.get(key);
      if (!found) {
        const before = depth > 0 ? shelf.shapes(r, inlet, depth - 1) : [];
        const random = randomNumbers(mixed(seed, r.index, inlet, depth, 2));
        found = [...before];
        for (let points = 2; points <= r.resolved.tooling.maxBends; points++) {
          if (depth === 0 && found.length > 0) break;
          let failed = 0;
          for (const drawn of rough(stage, r, inlet, points, lengthOf(r), own(r), random)) {
            if (depth === 0 && (found.length >= AT_FIRST.held || failed >= AT_FIRST.failed)) break;
            const held = alone(task, still, stage, r, drawn, lengthOf(r), own(r), STEPS);
            if (!held) failed++;
            else if (found.every((other) => !isSame(other, held))) found.push(held);
          }
        }
        found.sort((a, b) => a.bends - b.bends || a.turned - b.turned);
        known.set(key, found);
      }
      return found;
    },
  };
  return shelf;
}

/** The least obstructed of some draws. */
export function rough(
  stage: Stage,
  r: RunnerTask,
  inlet: number,
  points: number,
  length: number | null,
  barriers: readonly Barrier[],
  random: () => number,
  draws = ofPoints(DRAWS, points),
  kept = ofPoints(TRIED, points),
): Sketch[] {
  const start = startOf(stage, r);
  const end = endOf(stage, r, inlet);
  const bundles = bundlesOf(stage, r);
  const found: Sketch[] = [];
  for (let i = 0; i < draws; i++) {
    const drawn = propose(r, start, end, points, length, random);
    if (!drawn) continue;
    const path = pathOf(start, end, drawn.points, drawn.radii);
    found.push(sketched(r, inlet, path, drawn.points, drawn.joined, bundles, barriers));
  }
  return found.sort((a, b) => a.blocked - b.blocked).slice(0, kept);
}

/** From a list of numbers for 2, 3, 4 … points; the last holds for all beyond. */
export const ofPoints = (counts: readonly number[], points: number): number =>
  counts[Math.min(points - 2, counts.length - 1)]!;

function isSame(a: Sketch, b: Sketch): boolean {
  if (a.bends !== b.bends || a.points.length !== b.points.length) return false;
  return a.points.every((p, i) => Math.hypot(...p.map((x, k) => x - b.points[i]![k]!)) < SAME);
}

/** A seed of its own for each thing: whole numbers stirred into one. */
export function mixed(...parts: readonly number[]): number {
  let h = 0x811c9dc5;
  for (const part of parts) {
    h = Math.imul(h ^ (part + 0x9e3779b9), 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
    h ^= h >>> 16;
  }
  return h >>> 0;
}
