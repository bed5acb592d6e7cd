/** `npm run bench`: timings as ratios to a fixed piece of arithmetic in the same run, with the result's quality beside them. */
import { readFileSync } from 'node:fs';
import { parseDesign } from '../../shared/design/parse';
import { benchBalance } from './balance';
import { benchCheck } from './check';
import { benchFollow } from './follow';
import { benchMesh } from './mesh';
import { yardstick } from './yardstick';

const design = parseDesign(readFileSync('public/examples/v8-both-banks.evenrun.json', 'utf8'));
const unit = yardstick();
console.log(`yardstick  ${unit.toFixed(3)} ms (one million closest-point pairs of segments, best of nine)`);
for (const line of [...benchBalance(design, unit), ...benchCheck(design, unit), ...benchFollow(design, unit)])
  console.log(line);
for (const line of benchMesh()) console.log(line);
