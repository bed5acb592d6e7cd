/**
 * `npm start`: installs what is missing, builds when the sources are newer than what was built, serves it on this machine
 * alone, prints the address and opens a browser where there is one. Plain Node: it runs before anything is installed.
 */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { fail, insistOnNode, insistOnPackages, npm, ROOT, which } from './machine.mjs';
import { serve } from './serve.mjs';
import { newest, SOURCES } from './sources.mjs';

const USUAL_PORT = 4780;
const USAGE = `npm start -- [--port N] [--no-open]
  --port N    the first port to try (default ${USUAL_PORT}; the next ones follow while it is taken; 0: any)
  --no-open   print the address only`;

insistOnNode();
const { port, open } = readOptions();
insistOnPackages();
buildIfOld();
const server = await serve(join(ROOT, 'dist'), port).catch((error) =>
  fail(`No port could be opened: ${error.message}`),
);
console.log(`\nEvenrun is at ${server.url}   (Ctrl+C stops it)\n`);
if (open) openBrowser(server.url);
for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => server.close().then(() => process.exit(0)));

function readOptions() {
  try {
    const { values } = parseArgs({
      options: { port: { type: 'string' }, 'no-open': { type: 'boolean' }, help: { type: 'boolean', short: 'h' } },
    });
    if (values.help) {
      console.log(USAGE);
      process.exit(0);
    }
    const number = Number(values.port ?? USUAL_PORT);
    if (!Number.isInteger(number) || number < 0 || number > 65535) {
      throw new Error(`--port: found "${values.port}"; allowed: a whole number from 0 to 65535`);
    }
    return { port: number, open: !values['no-open'] };
  } catch (error) {
    return fail(`${error.message}\n${USAGE}`, 2);
  }
}

function buildIfOld() {
  const sources = [...SOURCES, 'index.html', 'vite.config.ts', 'public'];
  if (newest(['dist/index.html']) >= newest(sources)) return;
  console.log('Building …');
  if (!npm(['run', '--silent', 'build'])) fail('The build failed: see above.');
}

function openBrowser(url) {
  const command = browserCommand(url);
  if (!command) return;
  const [program, ...args] = command;
  spawn(program, args, { stdio: 'ignore', detached: true })
    .on('error', () => console.log('No browser could be opened: open the address above in one.'))
    .unref();
}

function browserCommand(url) {
  if (process.env.CI) return null;
  if (process.platform === 'darwin') return ['open', url];
  if (process.platform === 'win32') return ['cmd', '/c', 'start', '', url];
  const screen = process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  return screen && which('xdg-open') ? ['xdg-open', url] : null;
}
