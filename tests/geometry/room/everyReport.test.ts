/**
 * All that is found about the space, asked of every example with wrap, motion, tools and sensors, and of designs that are hardly
 * begun: no exception, numbers that are numbers, sentences that are sentences. mm.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  accessReport,
  gapReport,
  type Meshes,
  removalReport,
  resolveHeader,
  sensorReport,
  swallowedEnds,
  withWrapEnds,
  wrapPlans,
} from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { twin } from '../removal/headers';

const FOLDER = new URL('../../../public/examples/', import.meta.url);
const EXAMPLES = readdirSync(FOLDER).filter((file) => file.endsWith('.evenrun.json'));

/** Enough to take every turn of the search, not to find each way. */
const BUDGET = 300;

function reports(design: Design, meshes: Meshes) {
  const header = resolveHeader(design);
  const access = accessReport(header, meshes);
  const plans = wrapPlans(header, meshes);
  return {
    access,
    plans,
    ended: wrapPlans(resolveHeader(withWrapEnds(design, plans)), meshes),
    removal: removalReport(header, meshes, { budget: BUDGET }),
    sensors: sensorReport(header, meshes),
    gaps: gapReport(header, meshes),
    swallowed: swallowedEnds(design, meshes),
  };
}

/** Every number is one, every sentence begins with a capital or an id, ends, and has nothing unresolved in it. */
function sound(found: unknown, path = ''): void {
  if (typeof found === 'number') expect(Number.isFinite(found), path).toBe(true);
  else if (typeof found === 'string') {
    expect(found, path).not.toMatch(/undefined|NaN|Infinity|null|\[object| {2}| ,|\.\./);
    if (path.endsWith('message')) expect(found, path).toMatch(/^\S.*\.$/);
  } else if (ArrayBuffer.isView(found)) sound(Array.from(found as Float64Array), path);
  else if (found !== null && typeof found === 'object')
    for (const [key, value] of Object.entries(found)) sound(value, `${path}/${key}`);
}

/** With all that the space may hold. */
function furnished(design: Design): Design {
  const [runner] = design.runners;
  const [x, y, z] = design.ports[0]?.position ?? [0, 0, 0];
  const at = (dx: number, dy: number, dz: number): Vec3 => [x + dx, y + dy, z + dz];
  return {
    ...design,
    wrap: { thickness: 1.6, layers: 2, roll: 15 },
    motion: { rock: { position: at(0, -200, -150), axis: [1, 0, 0], angles: [-2, 2] }, heat: { temperature: 700 } },
    access: {},
    service: [
      { id: 'plug', kind: 'spark-plug', position: at(0, -30, 62), direction: [0, 0.62, 0.78] },
      { id: 'filter', kind: 'oil-filter', position: at(60, 20, -200), direction: [0, 1, 0] },
      { id: 'stick', kind: 'dipstick', position: at(-60, -40, 40), direction: [0, 0.15, 1] },
    ],
    ...(runner && { sensors: [{ id: 'egt', kind: 'temperature', on: { runner: runner.id }, at: 60, clock: 45 }] }),
  };
}

describe('every example, wrapped, moving, with things to reach', { timeout: 120_000 }, () => {
  test.each(EXAMPLES)('%s', (file) => {
    const design = parseDesign(readFileSync(new URL(file, FOLDER), 'utf8'));
    // Scans are left unread here: that too must be said in plain words.
    const found = reports(furnished(design), new Map());
    sound(found);
    expect(found.access.entries.length).toBeGreaterThan(2);
    expect(found.plans.map((p) => p.runner).sort()).toEqual(design.runners.map((r) => r.id).sort());
    for (const { possible, wrapped } of found.plans)
      for (const [from, to] of possible) {
        expect(from).toBeLessThan(to);
        expect(wrapped.some(([a, b]) => from >= a - 1e-6 && to <= b + 1e-6)).toBe(true);
      }
    expect(found.removal.pieces.length).toBeGreaterThan(0);
    expect(found.gaps.profiles).toHaveLength(design.runners.length);
  });
});

describe('designs that are hardly begun', { timeout: 60_000 }, () => {
  const whole = furnished(twin([]));
  const [plate] = whole.flanges!;
  const odd = ['M8', 'nonsense', '', '5/16-18', '3/0'].map((thread, i) => ({
    ...plate!.fasteners![0]!,
    position: [30 * i, 40, 0] as Vec3,
    kind: i % 2 === 0 ? 'stud' : 'thing',
    thread,
  }));
  const begun: Record<string, Design> = {
    'nothing at all': {
      ...whole,
      ...{ ports: [], runners: [], merges: [], flanges: [], sensors: [] },
    },
    'ports alone': { ...whole, runners: [], merges: [], sensors: [] },
    'runners that are not routed': { ...whole, runners: whole.runners.map(({ points: _, ...r }) => r) },
    'one of them routed': {
      ...whole,
      runners: whole.runners.map(({ points: _, ...r }, i) => (i ? r : whole.runners[0]!)),
    },
    'a flange without fasteners': { ...whole, flanges: [{ ...plate!, fasteners: [] }] },
    'a flange that says nothing of them': { ...whole, flanges: [{ ...plate!, fasteners: undefined }] as never },
    'a flange without ports': { ...whole, flanges: [{ ...plate!, ports: [] }] },
    'threads that nobody knows': { ...whole, flanges: [{ ...plate!, fasteners: odd }] },
    'a stretch wrapped of a runner that is not routed': {
      ...whole,
      runners: whole.runners.map(({ points: _, ...r }) => ({ ...r, wrapped: [[20, 90]] as [number, number][] })),
    },
    'a scan that has not been read': {
      ...whole,
      surroundings: [{ id: 'scan', shape: 'mesh', file: 'bay.stl' }],
    },
  };
  test.each(Object.entries(begun))('%s', (_, design) => {
    sound(reports(design, new Map()));
    sound(reports({ ...design, access: { required: true }, display: 'in' }, new Map()));
  });
});
