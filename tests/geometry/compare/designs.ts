import { readFileSync } from 'node:fs';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';

/** One of the routed layouts of tests/layouts/known. */
export const publicDesign = (name: string): Design =>
  parseDesign(readFileSync(new URL(`../../layouts/known/${name}.evenrun.json`, import.meta.url), 'utf8'));
