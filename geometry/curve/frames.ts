/** Frames carried along a centerline without twist (double reflection; Wang et al., ACM Trans. Graphics 27(1), 2008). */
import type { Vec3 } from '../../shared/vec3';
import { ANGLE_TOLERANCE } from '../tolerance';
import { addScaled, anySquareTo, cross, dot, norm, reject, sub, unit } from '../vector';
import type { Station } from './pointAt';

export type Frame = Station & {
  /** Unit vectors square to the tangent; `side` = tangent × normal. */
  readonly normal: Vec3;
  readonly side: Vec3;
};

/** Rotation-minimising frames at the given stations, starting from `up` projected square to the first tangent. */
export function frames(stations: readonly Station[], up?: Vec3): Frame[] {
  const first = stations[0];
  if (!first) return [];
  const projected = up ? reject(unit(up), first.tangent) : ([0, 0, 0] as const);
  let normal = norm(projected) > ANGLE_TOLERANCE ? unit(projected) : anySquareTo(first.tangent);
  return stations.map((here, i) => {
    if (i > 0) normal = carry(stations[i - 1]!, here, normal);
    return { ...here, normal, side: cross(here.tangent, normal) };
  });
}

function carry(from: Station, to: Station, normal: Vec3): Vec3 {
  const v1 = sub(to.position, from.position);
  const c1 = dot(v1, v1);
  if (c1 === 0) return unit(reject(normal, to.tangent));
  const n1 = addScaled(normal, v1, (-2 / c1) * dot(v1, normal));
  const t1 = addScaled(from.tangent, v1, (-2 / c1) * dot(v1, from.tangent));
  const v2 = sub(to.tangent, t1);
  const c2 = dot(v2, v2);
  const n2 = c2 > 0 ? addScaled(n1, v2, (-2 / c2) * dot(v2, n1)) : n1;
  return unit(reject(n2, to.tangent));
}
