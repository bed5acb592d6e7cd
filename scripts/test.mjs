/**
 * `npm test`: installs what is missing, then format and lint, types, unit tests, the build, browser tests. Every step runs
 * even where an earlier one failed; the last line counts tests, and the exit code is 0 only where every step held.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CHROMIUM_REMEDY, findChromium } from './chromium.mjs';
import { aptInstall, fail, insistOnNode, insistOnPackages, npm, ROOT, run, which } from './machine.mjs';

insistOnNode();
insistOnPackages();
const chromium = insistOnChromium();
insistOnJudge(() => which('admesh'), 'STL', 'admesh');
insistOnJudge(hasEzdxf, 'DXF', 'python3-ezdxf');
insistOnJudge(() => which('pdftoppm'), 'paper', 'poppler-utils');

const reports = mkdtempSync(join(tmpdir(), 'evenrun-test-'));
const counts = { passed: 0, failed: 0, skipped: 0 };
const failures = [];

step('format and lint', () => tool('@biomejs/biome/bin/biome', ['check', '--error-on-warnings', '.']));
step('types', () => tool('typescript/bin/tsc', ['--noEmit']));
step('unit tests', () => vitest('unit', 'app'));
step('build', () => npm(['run', '--silent', 'build']));
step('browser tests', () => vitest('browser'));

rmSync(reports, { recursive: true, force: true });
if (failures.length > 0) console.log(`\nFailed: ${failures.join(', ')}. See above.`);
const skipped = counts.skipped > 0 ? `, ${counts.skipped} skipped` : '';
console.log(`\n${counts.passed} passed, ${counts.failed} failed${skipped}`);
process.exit(failures.length > 0 ? 1 : 0);

function step(name, act) {
  console.log(`\n— ${name}`);
  const start = Date.now();
  const held = act();
  console.log(`— ${name}: ${held ? 'holds' : 'FAILED'}, ${((Date.now() - start) / 1000).toFixed(1)} s`);
  if (!held) failures.push(name);
}

/** A package's own program, without a shell between. */
function tool(path, args, options) {
  return run(process.execPath, [join(ROOT, 'node_modules', path), ...args], options);
}

/** A run that executed no test has not held, whatever its exit code. */
function vitest(...projects) {
  const report = join(reports, `${projects.join('-')}.json`);
  const args = [
    'run',
    ...projects.flatMap((name) => ['--project', name]),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ];
  const held = tool('vitest/vitest.mjs', args, { env: { ...process.env, CHROMIUM: chromium } });
  try {
    const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(
      readFileSync(report, 'utf8'),
    );
    // A file that broke before its first test holds none to count: it counts as one.
    const broken = testResults.filter((file) => file.status === 'failed' && file.assertionResults.length === 0);
    counts.passed += numPassedTests;
    counts.failed += numFailedTests + broken.length;
    counts.skipped += numPendingTests + numTodoTests;
    return held && numPassedTests > 0;
  } catch {
    console.log('The run left no report: it broke before its end.');
    return false;
  }
}

function insistOnChromium() {
  const found = findChromium();
  if (found) return found;
  if (process.env.CHROMIUM) fail(`CHROMIUM is set to "${process.env.CHROMIUM}", where there is no file.`);
  if (aptInstall('chromium')) return findChromium() ?? fail(CHROMIUM_REMEDY);
  return fail(CHROMIUM_REMEDY);
}

/** Separate programs judge our files from outside. Without one its tests skip, saying so; where CI is set they must not. */
function insistOnJudge(there, ofWhat, name) {
  if (there() || (aptInstall(name) && there())) return;
  const remedy = `The tests of ${ofWhat} need ${name}. Run: sudo apt-get install --no-install-recommends ${name}`;
  if (process.env.CI) fail(remedy);
  console.log(`${remedy}   Until then they are skipped.`);
}

/** Debian's package is for the system's own Python, not for another one on the path. */
function hasEzdxf() {
  return run('/usr/bin/python3', ['-c', 'import ezdxf'], { stdio: 'ignore' });
}
