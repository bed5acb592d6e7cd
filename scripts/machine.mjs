/**
 * What the start and test scripts need of the machine: the right Node, installed packages, programs on the path.
 * Plain Node without packages, so that it runs before anything is installed.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, statSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

/** As in package.json's `engines`. */
const LEAST_NODE = [20, 19];

export function insistOnNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > LEAST_NODE[0] || (major === LEAST_NODE[0] && minor >= LEAST_NODE[1])) return;
  fail(
    `Evenrun needs Node ${LEAST_NODE.join('.')} or newer; this is ${process.versions.node}. Install a newer Node and run the same command again.`,
  );
}

/** One line on standard error and out. */
export function fail(message, code = 1) {
  console.error(message);
  process.exit(code);
}

/** Runs a program to its end, its output shown as it comes. @returns whether it ended well */
export function run(program, args, options = {}) {
  const { status, error } = spawnSync(program, args, { cwd: ROOT, stdio: 'inherit', ...options });
  if (error) console.error(`${program}: ${error.message}`);
  return status === 0;
}

/** npm by the path of the one that runs us, so that it is found on every system. */
export function npm(args, options = {}) {
  const self = process.env.npm_execpath;
  if (self?.endsWith('.js')) return run(process.execPath, [self, ...args], options);
  return run('npm', args, { shell: process.platform === 'win32', ...options });
}

/** Installs the packages when they are missing or older than the lock file. */
export function insistOnPackages(options = {}) {
  const installed = join(ROOT, 'node_modules', '.package-lock.json');
  const upToDate =
    existsSync(installed) && statSync(installed).mtimeMs >= statSync(join(ROOT, 'package-lock.json')).mtimeMs;
  if (upToDate) return;
  console.error('Installing packages …');
  if (!npm(['ci', '--include=dev'], options))
    fail('The packages could not be installed: see above. With a network, run the same command again.');
}

/** Where a program is, or null. */
export function which(name) {
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  return folders.map((folder) => join(folder, name)).find((path) => existsSync(path)) ?? null;
}

const isRoot = () => process.getuid?.() === 0;

let listsRead = false;

/** Installs a Debian package where that is possible without asking. @returns whether it did */
export function aptInstall(name) {
  if (!isRoot() || !which('apt-get')) return false;
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  if (!listsRead) run('apt-get', ['update', '-qq'], { env });
  listsRead = true;
  return run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', name], { env });
}
