/** `npm run bench`: timings as ratios to a fixed piece of arithmetic in the same run, with the result's quality beside them. */
import { readFileSync } from 'node:fs';
import { parseDesign } from '../../shared/design/parse';
import { benchBalance } from './balance';
import { benchCheck } from './check';
import { benchFollow } from './follow';
import { benchWindows } from './windows';
import { yardstick } from './yardstick';

const four = parseDesign(readFileSync('public/examples/four-4-1.evenrun.json', 'utf8'));
const design = parseDesign(readFileSync('public/examples/v8-both-banks.evenrun.json', 'utf8'));
const unit = yardstick();
console.log(`yardstick  ${unit.toFixed(3)} ms (one million closest-point pairs of segments, best of nine)`);
const lines = [
  ...benchBalance(design, unit),
  ...benchCheck(design, unit),
  ...benchFollow(design, unit),
  ...benchWindows(four, design, unit),
];
for (const line of lines) console.log(line);
