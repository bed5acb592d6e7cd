/** What the pages say of rigs is so: their examples are read and run, and every name that the reader knows is told. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { substanceNames } from '../../../src/pulse/equations/substances';
import { DEFAULTS } from '../../../src/pulse/rig/normalised';
import { readRig } from '../../../src/pulse/rig/read';
import { END_KINDS, rigShape } from '../../../src/pulse/rig/shape';
import { startRig } from '../../../src/pulse/startRig';
import { contractRig } from './contract';

const page = readFileSync('docs/rig.md', 'utf8');
const readme = readFileSync('README.md', 'utf8');
const blocks = (text: string): string[] => [...text.matchAll(/```json\n(.*?)```/gs)].map(([, inside]) => inside!);

test('the example of the README runs to its end', () => {
  const running = startRig(readRig(blocks(readme).find((text) => text.includes('evenrun-rig'))!));
  while (!running.advance(1000));
  expect(running.result().times).toHaveLength(401);
});

test('each end that the page shows is read', () => {
  // One end a line, but for the last, which has two.
  const ends = blocks(page)[0]!
    .split(/\n(?=\{)/)
    .map((text) => JSON.parse(text));
  expect(ends).toHaveLength(5);
  for (const end of ends) {
    const places = Array.isArray(end.at[0]) ? end.at : [end.at];
    const rig = contractRig();
    rig.gas = { components: ['air', 'burnt'] };
    rig.probes = [];
    const ids = ['a', 'b', 'c', 'tail'];
    rig.pipes = ids.map((id) => ({ ...rig.pipes[0], id }));
    const taken = new Set(places.map(([id, side]: string[]) => `${id} ${side}`));
    const rest = ids.flatMap((id) => ['start', 'finish'].map((side) => [id, side]));
    rig.ends = [end, ...rest.filter(([id, side]) => !taken.has(`${id} ${side}`)).map((at) => ({ kind: 'closed', at }))];
    expect(() => readRig(JSON.stringify(rig))).not.toThrow();
  }
});

test('every field, kind and substance is on the page', () => {
  const remarks = ['title', 'about', 'note', 'source', 'name', 'description', 'comment'];
  const fields = Object.keys(rigShape.shape).filter((name) => !remarks.includes(name));
  for (const remark of remarks) expect(page).toContain(`\`${remark}\``);
  for (const field of fields) expect(page).toContain(`| \`${field}\` |`);
  for (const kind of END_KINDS) expect(page).toMatch(new RegExp(`^\\| (✚ )?\`${kind}\` \\|`, 'm'));
  for (const name of substanceNames) expect(page).toContain(`\`${name}\``);
  expect(page).toContain(`| ${DEFAULTS.courant} |`);
});

test('every example runs to its end, and what it keeps drifts by rounding alone', () => {
  for (const file of readdirSync('public/examples/rigs').filter((name) => name.endsWith('.rig.json'))) {
    const running = startRig(readRig(readFileSync(`public/examples/rigs/${file}`, 'utf8')));
    while (!running.advance(1000));
    const { mass, energy, times, steps, probes } = running.result();
    const most = (1e-12 * Math.max(1000, steps)) / 1000;
    expect(Math.abs(mass.drift), file).toBeLessThan(most);
    expect(Math.abs(energy.drift), file).toBeLessThan(most);
    expect(times.length, file).toBeGreaterThan(100);
    // Something happens at every probe.
    for (const { pressure } of probes) {
      expect(Math.max(...pressure) - Math.min(...pressure), file).toBeGreaterThan(500);
    }
  }
});
