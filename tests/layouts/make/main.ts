/** Writes the made problems again: npx tsx tests/layouts/make/main.ts */
import { writeFileSync } from 'node:fs';
import { ownProblems } from './own';

for (const [name, text] of ownProblems()) writeFileSync(new URL(`../own/${name}`, import.meta.url), text);
