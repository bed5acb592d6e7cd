/** What the ends of a rig owe its pipes and each other: every end of every pipe in exactly one entry, and each entry whole in itself. */
import { describe, oneOf, type Refusal } from '../../../shared/design/refusal';
import { LEAST_DIRECTION } from './limits';
import { didYouMean } from './nearest';
import { placesOf } from './places';
import { END_KINDS, type ShapedEnd, type ShapedRig } from './shape';
import type { PipeEnd } from './types';

export function endProblems({ pipes, ends }: ShapedRig): Refusal[] {
  const problems: Refusal[] = [];
  const ids = new Set(pipes.map(({ id }) => id));
  const taken = new Map<string, string>();
  ends.forEach((end, i) => {
    const places = placesOf(end);
    places.forEach((place, k) => {
      const path = end.at === place ? `ends/${i}/at` : `ends/${i}/at/${k}`;
      const [pipe, side] = place;
      if (!ids.has(pipe)) {
        problems.push({ path, found: describe(pipe), allowed: `${oneOf(ids)}${didYouMean(pipe, ids)}` });
        return;
      }
      const other = taken.get(keyOf(place));
      if (other === undefined) taken.set(keyOf(place), path);
      else {
        const found = `the ${side} of pipe "${pipe}", which ${other} has already`;
        problems.push({ path, found, allowed: 'each end of a pipe once: take it out of one of the two' });
      }
    });
    problems.push(...ownProblems(end, `ends/${i}`));
  });
  for (const id of ids) {
    for (const side of ['start', 'finish'] as const) {
      if (taken.has(keyOf([id, side]))) continue;
      const allowed = `one entry for it, of kind ${oneOf(END_KINDS).replace('one of ', '')}: { "kind": "closed", "at": [${describe(id)}, "${side}"] }`;
      problems.push({ path: 'ends', found: `no entry for the ${side} of pipe "${id}"`, allowed });
    }
  }
  return problems;
}

const keyOf = ([pipe, side]: PipeEnd): string => `${side} ${pipe}`;

function ownProblems(end: ShapedEnd, path: string): Refusal[] {
  if (end.kind === 'junction') return junctionProblems(end, path);
  if (end.kind === 'open' && end.area === undefined && end.dischargeCoefficient !== undefined) {
    const allowed = 'an "area" beside it, the hole that it is of, or none: the full bore is as wide as the pipe';
    return [{ path: `${path}/dischargeCoefficient`, found: `${end.dischargeCoefficient} without a hole`, allowed }];
  }
  const area = 'area' in end ? end.area : undefined;
  if (!Array.isArray(area)) return [];
  return area.flatMap(([time], line): Refusal[] => {
    const before = area[line - 1]?.[0];
    if (before === undefined || time > before) return [];
    return [
      { path: `${path}/area/${line}`, found: `time ${time} after ${before}`, allowed: 'a time after the line before' },
    ];
  });
}

function junctionProblems(
  { at, model = 'equal-pressure', angles, directions }: Extract<ShapedEnd, { kind: 'junction' }>,
  path: string,
): Refusal[] {
  const problems: Refusal[] = [];
  const say = (field: string, found: string, allowed: string): void => {
    problems.push({ path: `${path}/${field}`, found, allowed });
  };
  const each = `one for each of the ${at.length} places in "at"`;
  if (angles && angles.length !== at.length) say('angles', `${angles.length} angles`, each);
  if (directions && directions.length !== at.length) say('directions', `${directions.length} directions`, each);
  directions?.forEach((direction, k) => {
    if (Math.hypot(...direction) < LEAST_DIRECTION) {
      say(`directions/${k}`, describe(direction), 'a direction of some length: which way the pipe leads away');
    }
  });
  if (angles && directions) say('directions', 'angles and directions', 'one of the two');
  if (model === 'pressure-loss' && !angles && !directions) {
    say('model', '"pressure-loss" without angles', `"angles" in degrees or "directions", ${each}; or "equal-pressure"`);
  }
  return problems;
}
