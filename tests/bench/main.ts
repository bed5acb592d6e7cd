/**
 * `npm run bench [-- balance check engine follow gaps mesh pressed pulse scan solids windows]`: timings as ratios to a fixed piece of arithmetic in the same run,
 * with the result's quality beside them; `pulse` is set beside C. `npm run bench -- route …` lays every problem from nothing instead,
 * `npm run bench -- schemes` compares the schemes of the gas-flow solver that were tried.
 */
import { readFileSync } from 'node:fs';
import { parseDesign } from '../../shared/design/parse';
import type { Design } from '../../shared/design/types';
import { benchBalance } from './balance';
import { benchCheck } from './check';
import { benchEngine } from './engine';
import { benchFollow } from './follow';
import { benchGaps } from './gaps';
import { benchMesh } from './mesh';
import { benchPressed } from './pressed';
import { benchPulse } from './pulse/bench';
import { benchRoute } from './route/bench';
import { benchScan } from './scan/bench';
import { benchWindows } from './windows';
import { yardstick } from './yardstick';

const PARTS: Readonly<Record<string, (design: Design, unit: number) => string[] | Promise<string[]>>> = {
  balance: benchBalance,
  check: benchCheck,
  engine: (_, unit) => benchEngine(unit),
  follow: benchFollow,
  gaps: benchGaps,
  mesh: () => benchMesh(),
  pressed: benchPressed,
  pulse: () => benchPulse(),
  scan: benchScan,
  // The other kernel is large: loaded where it is asked for.
  solids: async () => (await import('./solids')).benchSolids(read('four-4-1')),
  windows: (design, unit) => benchWindows(read('four-4-1'), design, unit),
};

const [first, ...rest] = process.argv.slice(2);
if (first === 'route') benchRoute(rest, (line) => console.log(line));
// The gas-flow solver's scheme beside those that were tried: figures of quality alone, so not part of the plain run.
else if (first === 'schemes') (await import('./pulse/schemes/bench')).benchSchemes((line) => console.log(line));
else await measure(first === undefined ? Object.keys(PARTS) : [first, ...rest]);

function read(name: string): Design {
  return parseDesign(readFileSync(`public/examples/${name}.evenrun.json`, 'utf8'));
}

async function measure(names: readonly string[]): Promise<void> {
  const parts = names.map((name) => {
    const part = PARTS[name];
    if (!part) throw new Error(`there is no part "${name}": ${Object.keys(PARTS).join(', ')}, or route alone`);
    return part;
  });
  const design = read('v8-both-banks');
  const unit = yardstick();
  console.log(`yardstick  ${unit.toFixed(3)} ms (one million closest-point pairs of segments, best of nine)`);
  for (const part of parts) for (const line of await part(design, unit)) console.log(line);
}
