/** One problem laid once: by the kernel in this process on one thread, or by the command as users run it. */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { gathered, nothingYet, router } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import type { Problem } from './problems';

export type Outcome = {
  readonly problem: Problem;
  readonly seed: number;
  /** Null where nothing that holds was found in time. */
  readonly firstValidSeconds: number | null;
  readonly rounds: number;
  readonly bends: number;
  readonly angle: number;
  /** Null where nothing could be drawn. */
  readonly design: Design | null;
};

export function inProcess(problem: Problem, seed: number, seconds: number): Outcome {
  const started = performance.now();
  const spent = (): number => (performance.now() - started) / 1000;
  const over = (): boolean => spent() >= seconds;
  let firstValidSeconds: number | null = null;
  const see = (): void => {
    firstValidSeconds ??= spent();
  };
  const { round } = router(problem.design, problem.meshes, { seed });
  let harvest = nothingYet;
  let rounds = 0;
  for (; !over(); rounds++) harvest = gathered(harvest, round(rounds, see, over));
  const best = harvest.best;
  const { bends = 0, angle = 0, design = null } = best ?? {};
  return { problem, seed, firstValidSeconds: best?.report.ok ? firstValidSeconds : null, rounds, bends, angle, design };
}

export function byCommand(problem: Problem, seed: number, seconds: number, output: string): Outcome {
  const args = ['route', problem.path, '-o', output, '--json', '--seed', `${seed}`, '--seconds', `${seconds}`];
  const { status, stdout, stderr } = spawnSync('npm', ['run', '-s', 'evenrun', '--', ...args], {
    encoding: 'utf8',
    maxBuffer: 1e9,
  });
  if (status !== 0 && status !== 1) throw new Error(`${problem.name}: ${stderr}`);
  const { ok, firstValidSeconds, rounds, bends, angle } = JSON.parse(stdout);
  const design = parseDesign(readFileSync(output, 'utf8'));
  return { problem, seed, firstValidSeconds: ok ? firstValidSeconds : null, rounds, bends, angle, design };
}
