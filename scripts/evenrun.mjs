/**
 * `npm run evenrun`: the built command line, built first where the sources are newer. It is run in this process, so that
 * Ctrl+C, pipes and the exit code are the command's own; nothing but its own answer goes to standard output.
 */
import { mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { fail, insistOnNode, insistOnPackages, ROOT, run } from './machine.mjs';
import { newest, SOURCES } from './sources.mjs';

const BUILT = 'dist/cli/evenrun.js';
/** Standard output is the command's: what building says goes to standard error. */
const ASIDE = ['ignore', 2, 2];

insistOnNode();
if (newest([BUILT]) < newest(SOURCES)) build();
await import(pathToFileURL(join(ROOT, BUILT)).href);

/**
 * In a folder of its own, then put in place at once: another command may be starting at the same time. What is loaded only
 * when needed goes first, under names of its content, so that whichever entry is read finds its own.
 */
function build() {
  insistOnPackages({ stdio: ASIDE });
  const aside = join('dist', `cli-${process.pid}`);
  const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
  const args = ['build', '-c', 'vite.cli.config.ts', '--outDir', aside, '--logLevel', 'error'];
  if (!run(process.execPath, [vite, ...args], { stdio: ASIDE })) fail('The build failed: see above.', 2);
  mkdirSync(join(ROOT, 'dist/cli/assets'), { recursive: true });
  for (const name of readdirSync(join(ROOT, aside, 'assets')))
    renameSync(join(ROOT, aside, 'assets', name), join(ROOT, 'dist/cli/assets', name));
  renameSync(join(ROOT, aside, 'evenrun.js'), join(ROOT, BUILT));
  rmSync(join(ROOT, aside), { recursive: true });
}
