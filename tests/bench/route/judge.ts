/** The independent checker at zero slack, where this machine has what it needs. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeDesign } from '../../../shared/design/write';
import { LAYOUTS } from './problems';
import type { Outcome } from './solve';

const PYTHON = '/usr/bin/python3';

export const canJudge = (): boolean => spawnSync(PYTHON, ['-c', 'import numpy']).status === 0;

/** @returns what it says against a layout; empty where it agrees that every rule holds */
export function judged({ problem, seed, design }: Outcome, folder: string): string {
  const path = join(folder, `${problem.name}-${seed}.evenrun.json`);
  writeFileSync(path, writeDesign(design!));
  for (const file of problem.meshFiles) copyFileSync(join(problem.folder, file), join(folder, file));
  const args = [join(LAYOUTS, 'checker.py'), path, problem.path, '--slack', '0'];
  const { status, stdout, stderr } = spawnSync(PYTHON, args, { encoding: 'utf8' });
  return status === 0 ? '' : `${stdout}${stderr}`.trim().split('\n').slice(0, 3).join(' ');
}
