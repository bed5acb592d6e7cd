/**
 * Meshes on their way to a worker: with their hierarchies where these are known, so that no worker builds one again, and in
 * shared memory where there is such. The number tells a worker that it has this mesh already, and with it all that it measured
 * against it. Done where messages leave and come in, so that those who send them speak of meshes alone.
 */
import {
  adoptCounted,
  adoptTree,
  type FlatTree,
  knownCounted,
  knownTree,
  type Meshes,
  type TriangleSoup,
} from '../../../geometry';

type Packed = {
  readonly number: number;
  readonly mesh: FlatTree | TriangleSoup;
  /** What counts of it where it is cropped or thinned, as far as that is known. */
  readonly counted: readonly (readonly [key: string, flat: FlatTree])[];
};

const numbers = new WeakMap<TriangleSoup, number>();
let last = 0;

function numberOf(soup: TriangleSoup): number {
  const number = numbers.get(soup) ?? ++last;
  numbers.set(soup, number);
  return number;
}

const pack = (soup: TriangleSoup): Packed => ({
  number: numberOf(soup),
  mesh: knownTree(soup) ?? soup,
  counted: knownCounted(soup).flatMap(([key, own]) => {
    const flat = knownTree(own);
    return flat ? [[key, flat] as const] : [];
  }),
});

/** By file name, as every message has them. */
const isMeshes = (value: unknown): value is Meshes =>
  value instanceof Map && [...value.values()].every((soup) => ArrayBuffer.isView(soup));
const isPacked = (value: unknown): value is ReadonlyMap<string, Packed> =>
  value instanceof Map && [...value.values()].every((p) => typeof p === 'object' && p !== null && 'mesh' in p);

/** A message with every mesh map in it, itself or one object further in, changed. */
function changed(message: object, change: (value: unknown) => unknown): object {
  const out: Record<string, unknown> = { ...message };
  for (const [key, value] of Object.entries(message)) {
    if (key === 'meshes') out[key] = change(value);
    if (key === 'beside')
      out[key] = Object.fromEntries(Object.entries(value as object).map(([k, v]) => [k, change(v)]));
  }
  return out;
}

export const packedIn = (message: object): object =>
  changed(message, (value) =>
    isMeshes(value) ? new Map([...value].map(([file, soup]) => [file, pack(soup)])) : value,
  );

/** The worker's own end: the same mesh is the same soup for as long as it keeps coming. */
export function createUnpacker(): <T extends object>(message: T) => T {
  let here = new Map<number, TriangleSoup>();
  return (message) => {
    const next = new Map<number, TriangleSoup>();
    const unpack = ({ number, mesh, counted }: Packed): TriangleSoup => {
      const soup = next.get(number) ?? here.get(number) ?? (ArrayBuffer.isView(mesh) ? mesh : adoptTree(mesh));
      const known = new Set(knownCounted(soup).map(([key]) => key));
      for (const [key, flat] of counted) if (!known.has(key)) adoptCounted(key, soup, adoptTree(flat));
      next.set(number, soup);
      return soup;
    };
    const opened = changed(message, (value) =>
      isPacked(value) ? new Map([...value].map(([file, p]) => [file, unpack(p)])) : value,
    );
    if (next.size > 0) here = next;
    return opened as typeof message;
  };
}

/** The page's end: what is posted to the worker is packed. */
export function packing<W extends Pick<Worker, 'postMessage'>>(worker: W): W {
  const post = worker.postMessage.bind(worker) as (message: unknown) => void;
  worker.postMessage = (message: object) => post(packedIn(message));
  return worker;
}
