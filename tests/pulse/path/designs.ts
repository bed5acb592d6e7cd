/** Designs for tests of gas paths: the app's examples, and every layout kept beside the tests. */
import { readdirSync, readFileSync } from 'node:fs';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';

export type Named = { readonly name: string; readonly design: Design };

const SUFFIX = '.evenrun.json';

function folder(place: string): Named[] {
  const url = new URL(`../../../${place}/`, import.meta.url);
  return readdirSync(url)
    .filter((file) => file.endsWith(SUFFIX))
    .sort()
    .map((file) => ({
      name: `${place}/${file.slice(0, -SUFFIX.length)}`,
      design: parseDesign(readFileSync(new URL(file, url), 'utf8')),
    }));
}

export const examples = folder('public/examples');
export const layouts = ['known', 'classic', 'public', 'own'].flatMap((name) => folder(`tests/layouts/${name}`));

export const isRouted = ({ runners }: Design): boolean => runners.every(({ points }) => points !== undefined);

export const routed = [...examples, ...layouts].filter(({ design }) => isRouted(design));
export const unrouted = [...examples, ...layouts].filter(({ design }) => !isRouted(design));

export const example = (name: string): Design => examples.find((one) => one.name === `public/examples/${name}`)!.design;
