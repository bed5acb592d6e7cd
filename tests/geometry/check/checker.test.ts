/**
 * `check` against an independent checker, recorded (see tests/layouts/record.ts). The checker samples (1 mm along tubes,
 * some millimetres over a collector's body) and, but for places that its rules pick out, takes a tube's flat end for a
 * round one; so its gaps may be smaller than ours. Where the two differ by more than the band, brute force decides.
 */
import { describe, expect, test } from 'vitest';
import { check, resolveHeader } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { loadLayout } from '../../layouts/load';
import { mutate } from '../../layouts/mutate';
import { recorded } from '../../layouts/recorded';
import { leastOver, toBox, toCapsule, tubePatches, tubeTube } from '../clearance/bruteForce';
import { type Finding, findingsOf, ofChecker } from './findings';

/** Agreement that the contract asks for, mm (or degrees). */
const BAND = 0.05;
/** The checker's points on a collector's body lie up to some millimetres apart: how much a gap to it may be off. */
const BODY_BAND = 0.3;
/** Deeper than this an overlap has no one depth: only that it is one must agree. */
const DEEP = 0.5;

const band = (rule: string): number => (rule === 'merge-body' ? BODY_BAND : BAND);

test('all 48 known layouts are recorded', () => {
  expect(recorded.known).toHaveLength(48);
});

describe.each(recorded.known)('$name as it is', ({ name, quality, runners, clearance }) => {
  const { design, meshes } = loadLayout('known', name);
  const report = check(design, meshes);

  test('holds', () => {
    expect(report.problems.map((p) => p.message)).toEqual([]);
    expect(report.ok).toBe(true);
  });

  test('has the lengths, straights, bends and angles that the checker measured', () => {
    expect(report.runners.map((r) => r.id)).toEqual(runners.map((r) => r.id));
    for (const [i, r] of report.runners.entries()) {
      const theirs = runners[i]!;
      expect(r.length).toBeCloseTo(theirs.length, 5);
      expect(r.centerline).toBeCloseTo(theirs.centerline, 5);
      expect(r.bends).toBe(theirs.angles.length);
      for (const [k, angle] of r.angles.entries()) expect(angle).toBeCloseTo(theirs.angles[k]!, 5);
      for (const [k, straight] of r.straights.entries()) expect(straight).toBeCloseTo(theirs.straights[k]!, 5);
    }
    const all = report.runners.flatMap((r) => r.angles);
    expect(all.length).toBe(quality.bends);
    expect(all.reduce((a, b) => a + b, 0)).toBeCloseTo(quality.angle, 4);
  });

  test('has least gaps no smaller than the checker’s, and equal where both found the same place', () => {
    const { tubeToTube, surroundings, mergeBodies } = report.clearance;
    expect(tubeToTube!.gap).toBeGreaterThan(clearance.tubeToTube!.gap - BAND);
    expect(mergeBodies!.gap).toBeGreaterThan(clearance.mergeBodies!.gap - BODY_BAND);
    if (String(surroundings!.between) === String(clearance.surroundings!.between))
      expect(surroundings!.gap).toBeGreaterThan(clearance.surroundings!.gap - BAND);
  });
});

describe('broken layouts', () => {
  test.each(recorded.mutations.map((m, i) => ({ ...m, i, title: `${m.name}, ${JSON.stringify(m.change)}` })))(
    '$i: $title',
    ({ name, change, problems }) => {
      const { design: whole, meshes } = loadLayout('known', name);
      const design = mutate(whole, change);
      const ours = findingsOf(check(design, meshes).problems);
      const theirs = ofChecker(problems);
      for (const key of new Set([...ours.keys(), ...theirs.keys()])) agree(design, key, ours.get(key), theirs.get(key));
    },
  );
});

function agree(design: Design, key: string, ours: Finding | undefined, theirs: Finding | undefined): void {
  const { rule, past, subjects } = (ours ?? theirs)!;
  if (ours && theirs) {
    const deep = ours.isGap && ours.found < -DEEP && theirs.found < -DEEP;
    if (deep || Math.abs(ours.found - theirs.found) < band(rule)) return;
  } else if (past < band(rule)) return;
  // Two answers: the slow, rigorous one decides, and for gaps only.
  expect(['tube-to-tube', 'surroundings'], `${key}: ours ${ours?.found}, theirs ${theirs?.found}`).toContain(rule);
  const inBundle = (ours ?? theirs)!.allowed < 0;
  const slow = rule === 'surroundings' ? slowToSurrounding(design, subjects) : slowTubes(design, subjects, inBundle);
  if (ours && slow < -DEEP)
    // Brute force does not measure a deep overlap to the end.
    expect(ours.found, key).toBeLessThan(-DEEP);
  else if (ours)
    expect(Math.abs(ours.found - slow), `${key}: ours ${ours.found}, by brute force ${slow}`).toBeLessThan(BAND);
  else expect(slow, `${key} is missed`).toBeGreaterThan(theirs!.allowed);
}

/** Two runners into one merge, both inside its bundle, or not both. */
function slowTubes(design: Design, [a, b]: readonly string[], inBundle: boolean): number {
  const header = resolveHeader(design);
  const [p, q] = [a, b].map((id) => {
    const r = header.runners.find(({ runner }) => runner.id === id)!;
    const { bundle } = header.merges.get(r.runner.to.merge)!;
    return { line: r.centerline!, radius: r.tubeRadius, cut: r.centerline!.length - bundle };
  });
  if (inBundle) return tubeTube({ ...p!, from: p!.cut }, { ...q!, from: q!.cut });
  return Math.min(tubeTube({ ...p!, to: p!.cut }, q!), tubeTube(p!, { ...q!, to: q!.cut }));
}

function slowToSurrounding(design: Design, [runner, id]: readonly string[]): number {
  const r = resolveHeader(design).runners.find((x) => x.runner.id === runner)!;
  const s = design.surroundings!.find((x) => x.id === id)!;
  if (s.shape !== 'box' && s.shape !== 'capsule') throw new Error(`no brute force for a ${s.shape} here`);
  const field = s.shape === 'box' ? toBox(s.min, s.max) : toCapsule(s.a, s.b, s.radius);
  return leastOver(tubePatches(r.centerline!, r.tubeRadius), field);
}
