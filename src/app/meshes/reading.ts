/** Mesh files being read as a design is opened: one after the other, told as they go, and to be stopped. */
import { create } from 'zustand';
import {
  adoptCounted,
  countedKey,
  knownCounted,
  type Meshes,
  MM_PER_UNIT,
  scale,
  type TriangleSoup,
  unitOf,
} from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { NamedFile } from '../actions/readFiles';
import type { Corners } from './facts';
import { startMeshTask } from './task';

type Reading = {
  readonly name: string;
  readonly doing: string;
  /** From 0 to 1. */
  readonly part: number;
  stop(): void;
};

export const useReading = create<{ readonly now: Reading | null }>()(() => ({ now: null }));

/** @throws Cancelled where it was stopped, Error that says what is wrong with the file */
export async function readTold({ name, file }: NamedFile): Promise<TriangleSoup> {
  const task = startMeshTask({ do: 'read', name, file }, ({ doing, part }) => {
    if (useReading.getState().now?.stop === task.cancel) useReading.setState({ now: { ...own, doing, part } });
  });
  const own: Reading = { name, doing: 'Reading', part: 0, stop: task.cancel };
  useReading.setState({ now: own });
  try {
    return (await task.result).soup;
  } finally {
    if (useReading.getState().now?.stop === task.cancel) useReading.setState({ now: null });
  }
}

/** What counts of large meshes that the design crops or thins, worked out away from the page for all its workers. */
export async function prepared(design: Design, meshes: Meshes): Promise<void> {
  for (const s of design.surroundings ?? []) {
    const soup = s.shape === 'mesh' ? meshes.get(s.file) : undefined;
    if (s.shape !== 'mesh' || !soup || soup.length < 9 * LARGE || typeof Worker === 'undefined') continue;
    const key = countedKey(s);
    if (!key || knownCounted(soup).some(([known]) => known === key)) continue;
    const k = MM_PER_UNIT[unitOf(s)];
    const crop = s.crop ? (s.crop.map((corner) => scale(corner, 1 / k)) as unknown as Corners) : null;
    // What fails here is worked out, and told of, where it is needed.
    const taken = await startMeshTask({ do: 'count', soup, crop, thin: (s.thin ?? 0) / k }).result.catch(() => null);
    if (taken) adoptCounted(key, soup, taken.soup);
  }
}

/** Below this many triangles a hierarchy is built where it is needed, in a few hundredths of a second. */
const LARGE = 20_000;

/** What was read before, such as from this browser's storage, with its hierarchy where that takes long to build. */
export async function sorted(soup: TriangleSoup): Promise<TriangleSoup | null> {
  if (soup.length < 9 * LARGE || typeof Worker === 'undefined') return soup;
  try {
    return (await startMeshTask({ do: 'sort', soup }).result).soup;
  } catch {
    // They went over to the worker, and with it they are gone: as if they had not been kept.
    return null;
  }
}
