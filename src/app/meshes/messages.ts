/** What the page and the worker that reads meshes say to each other. A worker does one thing and is ended. */
import type { FlatTree } from '../../../geometry';
import type { Corners } from './facts';

/** Lengths are in the file's own unit. */
export type MeshWish =
  /** A file as it was handed over: the bytes never come to the page's own thread. */
  | { readonly do: 'read'; readonly name: string; readonly file: Blob }
  /** Triangles that were read before. */
  | { readonly do: 'sort'; readonly soup: Float32Array }
  /** What of them counts: cropped to a box, thinned by a distance. */
  | { readonly do: 'count'; readonly soup: Float32Array; readonly crop: Corners | null; readonly thin: number };

export type ReadMesh = {
  /** Its triangles with the hierarchy over them. */
  readonly flat: FlatTree;
  readonly box: Corners;
  /** What whoever chose the file should know: triangles left out, and the like. */
  readonly notes: readonly string[];
};

export type MeshReply =
  /** `part` from 0 to 1 of all there is to do. */
  { readonly doing: string; readonly part: number } | { readonly done: ReadMesh } | { readonly failed: string };
