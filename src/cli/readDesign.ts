/** A design file and the meshes that lie beside it. A mesh that is not there is left to `check` to report, with its place. */
import { existsSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { type Meshes, MM_PER_UNIT, soupBox, type TriangleSoup, unitOf } from '../../geometry';
import { MAX_DESIGN_BYTES } from '../../shared/design/limits';
import { DesignError, parseDesign } from '../../shared/design/parse';
import type { Design } from '../../shared/design/types';
import { MeshError } from '../formats/mesh/meshError';
import { readMesh, tooFar } from '../formats/mesh/readMesh';
import { readBytes, readText } from './files';
import { type Io, UnusableInput } from './io';

/** Ten million triangles: beyond any scan that an engine bay needs. */
export const MAX_MESH_BYTES = 500_000_084;

export type Loaded = { readonly design: Design; readonly meshes: Meshes };

/** @param path as the user gave it, from where the user stands */
export function loadDesign(path: string, io: Io): Loaded {
  const full = resolve(io.cwd, path);
  const design = designAt(full);
  return { design, meshes: readMeshes(design, dirname(full)) };
}

/** Without its meshes. @param full an absolute path */
export const designAt = (full: string): Design => naming(full, () => parseDesign(readText(full, MAX_DESIGN_BYTES)));

function readMeshes(design: Design, folder: string): Meshes {
  const meshes = new Map<string, TriangleSoup>();
  for (const surrounding of design.surroundings ?? []) {
    if (surrounding.shape !== 'mesh' || meshes.has(surrounding.file)) continue;
    // The contract says no folders: a design from a stranger must not reach elsewhere.
    if (basename(surrounding.file) !== surrounding.file || surrounding.file.startsWith('.'))
      throw new UnusableInput(
        `surroundings/${surrounding.id}/file: "${surrounding.file}" must name a file beside the design, no folders`,
      );
    const path = join(folder, surrounding.file);
    if (!existsSync(path)) continue;
    meshes.set(
      surrounding.file,
      naming(path, () => readMesh(surrounding.file, readBytes(path, MAX_MESH_BYTES)).soup),
    );
  }
  for (const surrounding of design.surroundings ?? []) {
    const soup = surrounding.shape === 'mesh' && meshes.get(surrounding.file);
    const refusal = soup && tooFar(soupBox(soup), MM_PER_UNIT[unitOf(surrounding)]);
    if (refusal) throw new UnusableInput(`surroundings/${surrounding.id}: ${surrounding.file}: ${refusal}`);
  }
  return meshes;
}

/** Refusals of content say where in the file; which file is known only here. */
export function naming<T>(path: string, act: () => T): T {
  try {
    return act();
  } catch (error) {
    if (error instanceof DesignError || error instanceof MeshError)
      throw new UnusableInput(`${path}: ${error.message}`);
    throw error;
  }
}
