/** The layouts kept beside this file: designs with the meshes that they name, read as the command line would. */
import { readdirSync, readFileSync } from 'node:fs';
import type { Meshes } from '../../geometry';
import { parseDesign } from '../../shared/design/parse';
import type { Design } from '../../shared/design/types';
import { readStl } from '../../src/formats/stl/read';

export type Folder = 'known' | 'classic' | 'public';
export type Layout = { readonly name: string; readonly design: Design; readonly meshes: Meshes };

const SUFFIX = '.evenrun.json';
const place = (folder: Folder, file: string): URL => new URL(`${folder}/${file}`, import.meta.url);

/** Names without their suffix, sorted. */
export const layoutNames = (folder: Folder): string[] =>
  readdirSync(new URL(`${folder}/`, import.meta.url))
    .filter((file) => file.endsWith(SUFFIX))
    .map((file) => file.slice(0, -SUFFIX.length))
    .sort();

export function loadLayout(folder: Folder, name: string): Layout {
  const design = parseDesign(readFileSync(place(folder, name + SUFFIX), 'utf8'));
  const files = (design.surroundings ?? []).flatMap((s) => (s.shape === 'mesh' ? [s.file] : []));
  return { name, design, meshes: new Map(files.map((file) => [file, readStl(readFileSync(place(folder, file)))])) };
}
