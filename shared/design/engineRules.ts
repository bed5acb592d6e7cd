/**
 * What the numbers of an engine owe each other: speeds, firing angles, valve tables. mm, crank degrees, rpm. Whether valve events
 * make sense is asked where an engine is followed (src/pulse/engine/setup), so that every design that was ever written still loads.
 */
import { baselineProblems } from './baselineRules';
import { describe, type Refusal } from './refusal';
import { risingProblems } from './rising';
import type { Engine, Valve } from './types';

export function engineProblems(engine: Engine | undefined): Refusal[] {
  if (!engine) return [];
  const { rpm, intakeValve, exhaustValve } = engine;
  return [
    ...(rpm && rpm[0] >= rpm[1]
      ? [{ path: 'engine/rpm', found: describe(rpm), allowed: 'the lower speed first' }]
      : []),
    ...firingProblems(engine),
    ...(intakeValve ? valveProblems('engine/intakeValve', intakeValve) : []),
    ...(exhaustValve ? valveProblems('engine/exhaustValve', exhaustValve) : []),
    ...baselineProblems(engine),
  ];
}

const CYCLE = 720;

function firingProblems({ firingAngles, firingOrder, cylinders }: Engine): Refusal[] {
  if (!firingAngles) return [];
  const path = 'engine/firingAngles';
  const count = firingOrder?.length ?? cylinders;
  if (count !== undefined && firingAngles.length !== count) {
    const of = firingOrder ? 'of the firing order' : 'of the engine';
    return [
      {
        path,
        found: `${firingAngles.length} angles`,
        allowed: `${count}, one for each cylinder ${of}; left out: evenly`,
      },
    ];
  }
  if (firingAngles.length === 0)
    return [{ path, found: 'no angle', allowed: 'one for each cylinder; left out: evenly' }];
  const problems: Refusal[] = [];
  if (firingAngles[0] !== 0) {
    const allowed = '0: the first of the firing order fires there, the others are counted from it';
    problems.push({ path: `${path}/0`, found: String(firingAngles[0]), allowed });
  }
  problems.push(...risingProblems(path, firingAngles, 'crank angle', 'in the firing order, counted on from the first'));
  firingAngles.forEach((angle, i) => {
    if (angle >= CYCLE)
      problems.push({ path: `${path}/${i}`, found: String(angle), allowed: `below ${CYCLE}, one whole cycle` });
  });
  return problems;
}

function valveProblems(path: string, { lifts, flow }: Valve): Refusal[] {
  return [...(lifts ? liftProblems(`${path}/lifts`, lifts) : []), ...(flow ? flowProblems(`${path}/flow`, flow) : [])];
}

function liftProblems(path: string, lifts: NonNullable<Valve['lifts']>): Refusal[] {
  const first = lifts[0];
  const last = lifts.at(-1);
  if (!first || !last || lifts.length < 3)
    return [{ path, found: `${lifts.length} rows`, allowed: 'at least three: shut, open, shut again' }];
  const angles = lifts.map(([angle]) => angle);
  const problems = risingProblems(path, angles, 'crank angle', 'rows in the order in which the crank turns');
  if (problems.length === 0 && last[0] - first[0] >= CYCLE)
    problems.push({
      path,
      found: `${last[0] - first[0]}° from first to last`,
      allowed: `less than ${CYCLE}°, one cycle`,
    });
  const shut = 'a lift of 0: the table begins and ends with the valve shut';
  if (first[1] !== 0) problems.push({ path: `${path}/0/1`, found: String(first[1]), allowed: shut });
  if (last[1] !== 0) problems.push({ path: `${path}/${lifts.length - 1}/1`, found: String(last[1]), allowed: shut });
  if (lifts.every(([, lift]) => lift === 0))
    problems.push({ path, found: 'a lift of 0 in every row', allowed: 'a lift above 0 somewhere, mm' });
  return problems;
}

function flowProblems(path: string, flow: NonNullable<Valve['flow']>): Refusal[] {
  if (flow.length === 0) return [{ path, found: 'no rows', allowed: 'at least one; left out: values from textbooks' }];
  const ratios = flow.map(([ratio]) => ratio);
  return risingProblems(path, ratios, 'lift over diameter', 'rows from the least lift to the greatest');
}
