/** The independent checker at zero slack, where this machine has what it needs. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeDesign } from '../../../shared/design/write';
import { LAYOUTS } from './problems';
import type { Outcome } from './solve';

let python: string | undefined;

/** The system's own first: it is the one that packages of the system serve. */
const foundPython = (): string | undefined =>
  ['/usr/bin/python3', 'python3'].find((name) => spawnSync(name, ['-c', 'import numpy']).status === 0);

export function canJudge(): boolean {
  python ??= foundPython();
  return python !== undefined;
}

/** @returns what it says against a layout; empty where it agrees that every rule holds */
export function judged({ problem, seed, design }: Outcome, folder: string): string {
  const path = join(folder, `${problem.name}-${seed}.evenrun.json`);
  writeFileSync(path, writeDesign(design!));
  for (const file of problem.meshFiles) copyFileSync(join(problem.folder, file), join(folder, file));
  const args = [join(LAYOUTS, 'checker.py'), path, problem.path, '--slack', '0'];
  const { status, stdout, stderr } = spawnSync(python!, args, { encoding: 'utf8' });
  return status === 0 ? '' : `${stdout}${stderr}`.trim().split('\n').slice(0, 3).join(' ');
}
