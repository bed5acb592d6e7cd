/**
 * Numbers of the engine form that are fine alone and impossible together, and lists of cylinders that do not name each
 * one once. mm. Expects every number within its bounds.
 */
import type { Refusal } from '../design/refusal';
import { type EngineForm, joinedFirst, type TubeForm } from './form';

export function partRefusals(form: EngineForm): Refusal[] {
  return [
    ...cylinderRefusals(form),
    ...engineRefusals(form),
    ...openingRefusals(form),
    ...tubeRefusals('primary', form.primary),
    ...(form.secondary ? tubeRefusals('secondary', form.secondary) : []),
    ...arrangementRefusals(form),
  ];
}

/** Banks, firing order and collectors each name every cylinder once. */
function cylinderRefusals({ cylinders, banks, firingOrder, collectors }: EngineForm): Refusal[] {
  const lists = [
    { path: 'firingOrder', named: firingOrder, verb: 'fires' },
    { path: 'banks', named: banks.flatMap((b) => b.cylinders), verb: 'stands in a bank' },
    { path: 'collectors', named: collectors.flatMap((c) => c.cylinders), verb: 'leads to a collector' },
  ];
  const empty = (path: string, of: readonly { readonly cylinders: readonly number[] }[]): Refusal[] =>
    of.flatMap(({ cylinders: c }, i) =>
      c.length === 0 ? [{ path: `${path}/${i}/cylinders`, found: 'no cylinder', allowed: 'at least one' }] : [],
    );
  return [
    ...lists.flatMap(({ path, named, verb }) => onceEach(cylinders, path, named, verb)),
    ...empty('banks', banks),
    ...empty('collectors', collectors),
  ];
}

function onceEach(count: number, path: string, named: readonly number[], verb: string): Refusal[] {
  const allowed = count === 1 ? 'cylinder 1 alone' : `each cylinder from 1 to ${count} once`;
  const stranger = named.find((n) => !Number.isInteger(n) || n < 1 || n > count);
  if (stranger !== undefined) return [{ path, found: `cylinder ${stranger}`, allowed }];
  const twice = named.find((n, i) => named.indexOf(n) < i);
  if (twice !== undefined) return [{ path, found: `cylinder ${twice} twice`, allowed }];
  const missing = Array.from({ length: count }, (_, i) => i + 1).filter((n) => !named.includes(n));
  if (missing.length === 0) return [];
  return [{ path, found: `no place where cylinder ${missing.join(', ')} ${verb}`, allowed }];
}

function engineRefusals({ rpm, rod, stroke, intakeValve, exhaustValve }: EngineForm): Refusal[] {
  const refusals: Refusal[] = [];
  if (rpm && rpm[0] >= rpm[1])
    refusals.push({ path: 'rpm', found: `${rpm[0]} to ${rpm[1]}`, allowed: 'the lower speed first' });
  if (rod !== undefined && stroke !== undefined && rod <= stroke / 2)
    refusals.push({ path: 'rod', found: String(rod), allowed: `more than half the stroke, ${stroke / 2} mm` });
  for (const [path, valve] of Object.entries({ intakeValve, exhaustValve })) {
    if (valve && valve.opens >= valve.closes)
      refusals.push({
        path: `${path}/opens`,
        found: `${valve.opens}, not before it closes at ${valve.closes}`,
        allowed: 'a crank angle before that at which it closes; take 720° off it',
      });
  }
  return refusals;
}

function openingRefusals({ port: { opening } }: EngineForm): Refusal[] {
  if (opening.shape !== 'rounded-rectangle') return [];
  const most = Math.min(opening.width, opening.height) / 2;
  if (opening.corner <= most) return [];
  const allowed = `at most half the shorter side, ${most} mm`;
  return [{ path: 'port/opening/corner', found: String(opening.corner), allowed }];
}

function tubeRefusals(which: string, { tube, tooling }: TubeForm): Refusal[] {
  const refusals: Refusal[] = [];
  const half = tube.outsideDiameter / 2;
  const least = `at least half the outside diameter, ${half} mm`;
  if (tube.wall >= half)
    refusals.push({
      path: `${which}/tube/wall`,
      found: String(tube.wall),
      allowed: `less than half the outside diameter, ${half} mm`,
    });
  if (tooling.centerlineRadius < half)
    refusals.push({
      path: `${which}/tooling/centerlineRadius`,
      found: String(tooling.centerlineRadius),
      allowed: least,
    });
  (tooling.otherRadii ?? []).forEach((radius, i) => {
    if (!(radius >= half))
      refusals.push({ path: `${which}/tooling/otherRadii/${i}`, found: String(radius), allowed: least });
  });
  return refusals;
}

function arrangementRefusals({ arrangement, collectors, secondary }: EngineForm): Refusal[] {
  const first = joinedFirst(arrangement);
  if (first === null) return [];
  const refusals = collectors.flatMap(({ cylinders }, i): Refusal[] => {
    if (cylinders.length % first === 0 && cylinders.length > first) return [];
    const allowed = `a multiple of ${first}, at least ${2 * first}; or "all-into-one" as the arrangement`;
    return [{ path: `collectors/${i}/cylinders`, found: `${cylinders.length} cylinders`, allowed }];
  });
  if (!secondary)
    refusals.push({
      path: 'secondary',
      found: 'nothing',
      allowed: 'the tube between the first merges and the collector',
    });
  return refusals;
}
