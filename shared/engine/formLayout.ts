/**
 * Places of the engine form that cannot be: ports nearer than their tubes are wide, directions without direction, a
 * collector in the head, two in one place. mm, degrees. Expects lists and sizes that passed formParts.ts.
 */
import { LEAST_SINE, LEAST_VECTOR, MAX_LENGTH } from '../design/limits';
import { describe, type Refusal } from '../design/refusal';
import type { Vec3 } from '../vec3';
import type { CollectorForm, EngineForm } from './form';
import { portPlaces } from './formPorts';

/** The head as far as a form knows it, above and below its ports. Common practice; a real head is drawn as a surrounding. */
const HEAD_ABOVE = 100;
const HEAD_BELOW = 50;

export function layoutRefusals(form: EngineForm): Refusal[] {
  const directions = directionRefusals(form);
  if (directions.length > 0) return directions;
  return [...pitchRefusals(form), ...form.collectors.flatMap((c, i) => collectorRefusals(form, c, i)), ...apart(form)];
}

function directionRefusals({ banks, collectors }: EngineForm): Refusal[] {
  const zero = (path: string, v: Vec3): Refusal[] =>
    length(v) >= LEAST_VECTOR ? [] : [{ path, found: describe(v), allowed: 'a vector with a direction' }];
  const far = (path: string, p: Vec3): Refusal[] =>
    length(p) <= MAX_LENGTH ? [] : [{ path, found: describe(p), allowed: `a place within ${MAX_LENGTH} mm` }];
  return [
    ...banks.flatMap(({ direction, up, firstPort }, i) => {
      const none = [
        ...zero(`banks/${i}/direction`, direction),
        ...zero(`banks/${i}/up`, up),
        ...far(`banks/${i}/firstPort`, firstPort),
      ];
      if (none.length > 0 || sine(direction, up) >= LEAST_SINE) return none;
      const allowed = 'a vector that is not along direction';
      return [{ path: `banks/${i}/up`, found: `${describe(up)}, along direction`, allowed }];
    }),
    ...collectors.flatMap(({ axis, position }, i) => [
      ...zero(`collectors/${i}/axis`, axis),
      ...far(`collectors/${i}/position`, position),
    ]),
  ];
}

function pitchRefusals({ banks, primary, tubeToTube, port, flange }: EngineForm): Refusal[] {
  const { outsideDiameter } = primary.tube;
  const opening = port.opening.shape === 'round' ? port.opening.diameter : port.opening.width;
  const least = Math.max(outsideDiameter + tubeToTube, opening + flange.hole);
  return banks.flatMap(({ cylinders, pitch }, i): Refusal[] => {
    if (cylinders.length < 2 || Math.abs(pitch) >= least) return [];
    const why = `the tube and the gap beside it, or the opening and a stud`;
    return [
      {
        path: `banks/${i}/pitch`,
        found: String(pitch),
        allowed: `at least ${least} mm either way (${why}); choose a thinner tube or a smaller opening`,
      },
    ];
  });
}

function collectorRefusals(form: EngineForm, { cylinders, position }: CollectorForm, i: number): Refusal[] {
  const ports = portPlaces(form);
  const path = `collectors/${i}/position`;
  const { tooling, tube } = form.primary;
  const room = tooling.firstStraight + tooling.lastStraight + tube.outsideDiameter;
  for (const port of ports) {
    const away = length(sub(position, port.position));
    if (away < room && cylinders.length > 1) {
      const found = `${describe(position)}, ${away.toFixed(1)} mm from the port of cylinder ${port.cylinder}`;
      return [{ path, found, allowed: `at least ${room} mm from every port; move it out or down` }];
    }
  }
  return form.banks.flatMap((bank, b): Refusal[] => {
    const own = ports.filter((p) => bank.cylinders.includes(p.cylinder));
    const along = own.map((p) => p.position[0]);
    const margin = Math.max(Math.abs(bank.pitch) / 2, tube.outsideDiameter);
    const out = unit(bank.direction);
    const up = unit(reject(bank.up, out));
    const from = sub(position, own[0]!.position);
    const high = dot(from, up);
    const inHead =
      dot(from, out) < 0 &&
      high < HEAD_ABOVE &&
      high > -HEAD_BELOW &&
      position[0] > Math.min(...along) - margin &&
      position[0] < Math.max(...along) + margin;
    if (!inHead) return [];
    const found = `${describe(position)}, in the head of bank ${b + 1}`;
    return [
      {
        path,
        found,
        allowed: `a place in front of its flange, or clear of the head; move it along ${describe(bank.direction)}`,
      },
    ];
  });
}

/** Two collectors need room for their inlet tubes. */
function apart({ collectors, primary, secondary, arrangement }: EngineForm): Refusal[] {
  const { outsideDiameter } = (arrangement === 'all-into-one' ? null : secondary)?.tube ?? primary.tube;
  return collectors.flatMap((a, i) =>
    collectors.slice(0, i).flatMap((b, k): Refusal[] => {
      const away = length(sub(a.position, b.position));
      if (away >= 2 * outsideDiameter) return [];
      const found = `${describe(a.position)}, ${away.toFixed(1)} mm from collector ${k + 1}`;
      return [{ path: `collectors/${i}/position`, found, allowed: `at least ${2 * outsideDiameter} mm away` }];
    }),
  );
}

const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const length = (v: Vec3): number => Math.hypot(v[0], v[1], v[2]);
const unit = (v: Vec3): Vec3 => [v[0] / length(v), v[1] / length(v), v[2] / length(v)];
const reject = (v: Vec3, axis: Vec3): Vec3 => {
  const k = dot(v, axis);
  return [v[0] - k * axis[0], v[1] - k * axis[1], v[2] - k * axis[2]];
};
const sine = (a: Vec3, b: Vec3): number => length(reject(unit(b), unit(a)));
