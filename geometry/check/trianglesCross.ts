/**
 * Whether two triangles cross. They do where they have a stretch in common that runs inside at least one of them, or an
 * area; corner on corner, corner on face and edge along edge are touching. Nearer than the tolerance is touching too, so
 * that what rounding does to a sound mesh is no crossing. Works on flat arrays and leaves no garbage. mm.
 */

/** Triangles by nines and their unit normals by threes. */
export type Facets = { readonly soup: Float64Array; readonly normals: Float64Array };

/** Planes nearer to one another than this (sine of their angle) have a common line that rounding may move far. */
const SHALLOW = 0.01;

/** How high three corners stand over a plane, which of them touch it, and where the plane cuts the triangle. */
type Stand = { readonly heights: Float64Array; above: number; below: number; on: number; readonly cut: Float64Array };
const stand = (): Stand => ({ heights: new Float64Array(3), above: 0, below: 0, on: 0, cut: new Float64Array(6) });
const [first, second] = [stand(), stand()];
const middle = new Float64Array(3);

/** @param place gets three numbers, where they cross; untouched where they do not */
export function trianglesCross(facets: Facets, a: number, b: number, tolerance: number, place: Float64Array): boolean {
  measure(first, facets, b, a, tolerance);
  if (first.on === 3) return sharePlane(facets, a, b, tolerance, place);
  if (first.above === 0 || first.below === 0)
    return first.on === 2 && edgeInside(facets, b, first, a, tolerance, place);
  measure(second, facets, a, b, tolerance);
  if (second.on === 3) return sharePlane(facets, b, a, tolerance, place);
  if (second.above === 0 || second.below === 0)
    return second.on === 2 && edgeInside(facets, a, second, b, tolerance, place);
  cut(first, facets, b);
  cut(second, facets, a);
  if (!overlapOnLine(first.cut, second.cut, tolerance, middle)) return false;
  // Edges that only meet may overlap along the line by more than they do across it.
  if (!isInside(facets, a, tolerance) && !isInside(facets, b, tolerance)) return false;
  place.set(middle);
  return !isShallow(facets.normals, 3 * a, 3 * b) || overlapInPlane(facets, a, b, tolerance);
}

/** Of the triangle `of` over the plane of `plane`. */
function measure(into: Stand, { soup, normals }: Facets, of: number, plane: number, tolerance: number): void {
  const [o, n] = [9 * plane, 3 * plane];
  const [nx, ny, nz] = [normals[n]!, normals[n + 1]!, normals[n + 2]!];
  into.above = into.below = into.on = 0;
  for (let k = 0; k < 3; k++) {
    const p = 9 * of + 3 * k;
    const height = nx * (soup[p]! - soup[o]!) + ny * (soup[p + 1]! - soup[o + 1]!) + nz * (soup[p + 2]! - soup[o + 2]!);
    if (height > tolerance) into.above++;
    else if (height < -tolerance) into.below++;
    else into.on++;
    into.heights[k] = Math.abs(height) > tolerance ? height : 0;
  }
}

/** The two points where the plane leaves a triangle that stands on both its sides. */
function cut({ heights, cut: ends }: Stand, { soup }: Facets, of: number): void {
  let at = 0;
  for (let k = 0; k < 3 && at < 6; k++) {
    const l = (k + 1) % 3;
    const [h, i] = [heights[k]!, heights[l]!];
    const s = h === 0 ? 0 : h * i < 0 ? h / (h - i) : -1;
    if (s < 0) continue;
    const [p, q] = [9 * of + 3 * k, 9 * of + 3 * l];
    for (let axis = 0; axis < 3; axis++) ends[at++] = soup[p + axis]! + s * (soup[q + axis]! - soup[p + axis]!);
  }
}

/** Two stretches of one line: whether they have more than the tolerance in common. */
function overlapOnLine(one: Float64Array, other: Float64Array, tolerance: number, place: Float64Array): boolean {
  const [along, across] = lengthOf(one) >= lengthOf(other) ? [one, other] : [other, one];
  const length = lengthOf(along);
  if (!(length > tolerance)) return false;
  const [x, y, z] = [along[0]!, along[1]!, along[2]!];
  const [ux, uy, uz] = [(along[3]! - x) / length, (along[4]! - y) / length, (along[5]! - z) / length];
  const from = ux * (across[0]! - x) + uy * (across[1]! - y) + uz * (across[2]! - z);
  const to = ux * (across[3]! - x) + uy * (across[4]! - y) + uz * (across[5]! - z);
  const low = Math.max(0, Math.min(from, to));
  const high = Math.min(length, Math.max(from, to));
  if (!(high - low > tolerance)) return false;
  const halfway = (low + high) / 2;
  place[0] = x + halfway * ux;
  place[1] = y + halfway * uy;
  place[2] = z + halfway * uz;
  return true;
}

function lengthOf(ends: Float64Array): number {
  const [x, y, z] = [ends[3]! - ends[0]!, ends[4]! - ends[1]!, ends[5]! - ends[2]!];
  return Math.sqrt(x * x + y * y + z * z);
}

function isShallow(normals: Float64Array, a: number, b: number): boolean {
  const x = normals[a + 1]! * normals[b + 2]! - normals[a + 2]! * normals[b + 1]!;
  const y = normals[a + 2]! * normals[b]! - normals[a]! * normals[b + 2]!;
  const z = normals[a]! * normals[b + 1]! - normals[a + 1]! * normals[b]!;
  return x * x + y * y + z * z < SHALLOW * SHALLOW;
}

/** How far inside an edge of triangle `of` a point is, measured in that triangle's plane. */
function inside({ soup, normals }: Facets, of: number, edge: number, x: number, y: number, z: number): number {
  const [p, q, n] = [9 * of + 3 * edge, 9 * of + 3 * ((edge + 1) % 3), 3 * of];
  const [ex, ey, ez] = [soup[q]! - soup[p]!, soup[q + 1]! - soup[p + 1]!, soup[q + 2]! - soup[p + 2]!];
  const [nx, ny, nz] = [normals[n]!, normals[n + 1]!, normals[n + 2]!];
  const [mx, my, mz] = [ny * ez - nz * ey, nz * ex - nx * ez, nx * ey - ny * ex];
  const across = mx * (x - soup[p]!) + my * (y - soup[p + 1]!) + mz * (z - soup[p + 2]!);
  return across / Math.sqrt(ex * ex + ey * ey + ez * ez);
}

/** Of the place kept as the middle. */
function isInside(facets: Facets, of: number, tolerance: number): boolean {
  for (let edge = 0; edge < 3; edge++)
    if (inside(facets, of, edge, middle[0]!, middle[1]!, middle[2]!) <= tolerance) return false;
  return true;
}

/** Two triangles of one plane have an area in common unless an edge of one keeps them apart. */
function overlapInPlane(facets: Facets, a: number, b: number, tolerance: number): boolean {
  return !keepsApart(facets, a, b, tolerance) && !keepsApart(facets, b, a, tolerance);
}

function keepsApart(facets: Facets, of: number, other: number, tolerance: number): boolean {
  const { soup } = facets;
  for (let edge = 0; edge < 3; edge++) {
    let most = Number.NEGATIVE_INFINITY;
    for (let p = 9 * other; p < 9 * other + 9; p += 3)
      most = Math.max(most, inside(facets, of, edge, soup[p]!, soup[p + 1]!, soup[p + 2]!));
    if (most <= tolerance) return true;
  }
  return false;
}

/** The place is the middle of what the triangles' boxes share: near enough to look there. */
function sharePlane(facets: Facets, a: number, b: number, tolerance: number, place: Float64Array): boolean {
  if (!overlapInPlane(facets, a, b, tolerance)) return false;
  const { soup } = facets;
  for (let axis = 0; axis < 3; axis++) {
    const [p, q] = [9 * a + axis, 9 * b + axis];
    const low = Math.max(
      Math.min(soup[p]!, soup[p + 3]!, soup[p + 6]!),
      Math.min(soup[q]!, soup[q + 3]!, soup[q + 6]!),
    );
    const high = Math.min(
      Math.max(soup[p]!, soup[p + 3]!, soup[p + 6]!),
      Math.max(soup[q]!, soup[q + 3]!, soup[q + 6]!),
    );
    place[axis] = (low + high) / 2;
  }
  return true;
}

/** An edge of `of` that lies in the plane of `plane`: whether a stretch of it runs inside that triangle. */
function edgeInside(
  facets: Facets,
  of: number,
  { heights }: Stand,
  plane: number,
  tolerance: number,
  place: Float64Array,
): boolean {
  const { soup } = facets;
  const off = heights[0] !== 0 ? 0 : heights[1] !== 0 ? 1 : 2;
  const [p, q] = [9 * of + 3 * ((off + 1) % 3), 9 * of + 3 * ((off + 2) % 3)];
  const [x, y, z] = [soup[p]!, soup[p + 1]!, soup[p + 2]!];
  const [dx, dy, dz] = [soup[q]! - x, soup[q + 1]! - y, soup[q + 2]! - z];
  let [low, high] = [0, 1];
  for (let edge = 0; edge < 3; edge++) {
    const from = inside(facets, plane, edge, x, y, z) - tolerance;
    const to = inside(facets, plane, edge, x + dx, y + dy, z + dz) - tolerance;
    if (from < 0 && to < 0) return false;
    if (from < 0) low = Math.max(low, from / (from - to));
    else if (to < 0) high = Math.min(high, from / (from - to));
  }
  if (!((high - low) * Math.sqrt(dx * dx + dy * dy + dz * dz) > tolerance)) return false;
  const halfway = (low + high) / 2;
  place[0] = x + halfway * dx;
  place[1] = y + halfway * dy;
  place[2] = z + halfway * dz;
  return true;
}
