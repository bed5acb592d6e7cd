/** The problems that the router is measured on, by class, and what is known of each. Run from the project's folder. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Meshes } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { readStl } from '../../../src/formats/stl/read';

export type Reference = {
  readonly bends: number;
  readonly angle: number;
  readonly knownBends: number;
};

export type Problem = {
  readonly name: string;
  /** easy, medium, hard, classic; the project's own by their kind. */
  readonly kind: string;
  readonly path: string;
  readonly folder: string;
  readonly design: Design;
  readonly meshes: Meshes;
  readonly meshFiles: readonly string[];
  readonly reference: Reference | null;
};

export const LAYOUTS = 'tests/layouts';
const SUFFIX = '.evenrun.json';

/** @param wanted part of a name or kind; all where empty */
export function problems(wanted: readonly string[]): Problem[] {
  const references = JSON.parse(readFileSync(`${LAYOUTS}/reference.json`, 'utf8')) as Record<string, Reference>;
  return ['public', 'classic', 'own']
    .map((set) => ({ set, folder: join(LAYOUTS, set) }))
    .filter(({ folder }) => existsSync(folder))
    .flatMap(({ set, folder }) => readdirSync(folder).map((file) => ({ set, folder, file })))
    .filter(({ file }) => file.endsWith(SUFFIX))
    .map(({ set, folder, file }) => loaded(set, folder, file, references[file] ?? null))
    .filter(({ name, kind }) => wanted.length === 0 || wanted.some((w) => kind === w || name.includes(w)))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

function loaded(set: string, folder: string, file: string, reference: Reference | null): Problem {
  const path = join(folder, file);
  const name = file.slice(0, -SUFFIX.length);
  const design = parseDesign(readFileSync(path, 'utf8'));
  const meshFiles = (design.surroundings ?? []).flatMap((s) => (s.shape === 'mesh' ? [s.file] : []));
  const meshes = new Map(meshFiles.map((f) => [f, readStl(readFileSync(join(folder, f)))] as const));
  return { name, kind: kindOf(set, name), path, folder, design, meshes, meshFiles, reference };
}

/** p13-hard is hard; own ones are numbered behind their kind, such as crowded-bay-2. */
function kindOf(set: string, name: string): string {
  if (set === 'classic') return set;
  return set === 'public' ? name.split('-').at(-1)! : `own ${name.replace(/-?\d+$/, '')}`;
}
