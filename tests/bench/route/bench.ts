/**
 * `npm run bench -- route [--seconds 10] [--seeds 1,2] [--only hard,c9] [--threads] [--each]`: every problem laid from
 * nothing. In this process on one thread, or with --threads by the built command on all cores.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { canJudge, judged } from './judge';
import { problems } from './problems';
import { byCommand, inProcess } from './solve';
import { classLines, summary } from './table';

export function benchRoute(args: readonly string[], print: (line: string) => void): void {
  const { values } = parseArgs({
    args: [...args],
    options: {
      seconds: { type: 'string', default: '10' },
      seeds: { type: 'string', default: '1' },
      only: { type: 'string', default: '' },
      threads: { type: 'boolean', default: false },
      each: { type: 'boolean', default: false },
    },
  });
  const seconds = Number(values.seconds);
  const seeds = values.seeds.split(',').map(Number);
  if (!(seconds > 0)) throw new Error(`--seconds: found "${values.seconds}"; allowed: more than 0`);
  if (!seeds.every(Number.isInteger)) throw new Error(`--seeds: found "${values.seeds}"; allowed: such as 1,2`);

  const all = problems(values.only.split(',').filter((w) => w !== ''));
  const folder = mkdtempSync(join(tmpdir(), 'evenrun-bench-'));
  try {
    const outcomes = seeds.flatMap((seed) =>
      all.map((problem) => {
        const outcome = values.threads
          ? byCommand(problem, seed, seconds, join(folder, 'out.evenrun.json'))
          : inProcess(problem, seed, seconds);
        const { firstValidSeconds: first, rounds, bends, angle } = outcome;
        const held = first === null ? 'none holds' : `${first.toFixed(3)} s, ${bends} bends, ${angle.toFixed(1)}°`;
        if (values.each) print(`  ${problem.name} seed ${seed}: ${held}, ${rounds} rounds`);
        return outcome;
      }),
    );
    const how = values.threads ? 'the command, all cores' : 'in process, one thread';
    print(`route      ${all.length} problems, seeds ${seeds.join(', ')}, ${seconds} s each, ${how}`);
    for (const line of classLines(outcomes)) print(`  ${line}`);
    const solved = outcomes.filter((o) => o.firstValidSeconds !== null);
    const judges = canJudge();
    const against = judges ? solved.map((o) => [o, judged(o, folder)] as const).filter(([, says]) => says !== '') : [];
    for (const [{ problem, seed }, says] of against) print(`  checker against ${problem.name} seed ${seed}: ${says}`);
    const judgement = judges
      ? `independent checker against ${against.length} of ${solved.length} (0)${against.length > 0 ? ' (!)' : ''}`
      : 'not judged: no python3 with numpy';
    print(summary(outcomes, judgement));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
