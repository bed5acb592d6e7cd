/**
 * Speeds followed for tests in processes of their own, out of one bundle: as modules of the test runner the solver's loops take several
 * times as long. What comes back is what `followSpeed` answers.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import type { SpeedJob } from '../../src/pulse/forecast/job';
import type { SpeedAnswer } from '../../src/pulse/forecast/types';

const ENTRY = fileURLToPath(new URL('followThem.ts', import.meta.url));
/** Side by side. */
const PROCESSES = 2;

/** Answers in the order of the jobs. @throws what a process said before it ended badly */
export async function followAll(jobs: readonly SpeedJob[]): Promise<SpeedAnswer[]> {
  const folder = mkdtempSync(join(tmpdir(), 'evenrun-followed-'));
  try {
    await build({
      configFile: false,
      publicDir: false,
      logLevel: 'error',
      ssr: { noExternal: true },
      build: { ssr: ENTRY, outDir: folder, target: 'node20', minify: false, emptyOutDir: false },
    });
    const answers: SpeedAnswer[] = [];
    const parts = Array.from({ length: PROCESSES }, (_, k) => jobs.map((_, i) => i).filter((i) => i % PROCESSES === k));
    await Promise.all(
      parts.map(async (part) => {
        const told = await run(
          join(folder, 'followThem.js'),
          part.map((i) => jobs[i]!),
        );
        for (const [n, i] of part.entries()) answers[i] = told[n]!;
      }),
    );
    return answers;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function run(script: string, jobs: readonly SpeedJob[]): Promise<SpeedAnswer[]> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [script], { stdio: ['pipe', 'pipe', 'pipe'] });
    let [out, err] = ['', ''];
    child.stdout.on('data', (text) => {
      out += text;
    });
    child.stderr.on('data', (text) => {
      err += text;
    });
    child.on('error', reject);
    child.on('close', (code) => (code === 0 ? resolve(JSON.parse(out)) : reject(new Error(err))));
    child.stdin.end(JSON.stringify(jobs));
  });
}
