/**
 * What is asked of an imported mesh, and what comes of it: the surrounding to add, or what is missing or wrong. Pure. Lengths in
 * mm; places on the scan along the file's own axes, in mm once its unit is known.
 */
import { type Header, MM_PER_UNIT, poseFromPoints, scale } from '../../../../geometry';
import type { NewMesh } from '../../../../shared/design/edit';
import type { LengthUnit } from '../../../../shared/design/types';
import { surroundingKind } from '../../../../shared/stock/surroundingKinds';
import type { Vec3 } from '../../../../shared/vec3';
import type { Corners } from '../facts';

export type Three<T> = readonly [T, T, T];
type Typed = readonly [number | null, number | null, number | null];

/** A place of the design by its key, or typed. */
export type Target = { readonly key: string } | { readonly typed: Typed };

export type ImportWish = {
  /** Null: not said yet. */
  readonly unit: LengthUnit | null;
  readonly kind: string | null;
  /** Null: as the kind proposes. */
  readonly clearance: number | null;
  /** mm. */
  readonly crop: Corners | null;
  readonly thin: number | null;
  readonly placing: 'as it lies' | 'three points';
  /** On the scan, in the file's own unit. */
  readonly from: Three<Vec3 | null>;
  readonly to: Three<Target | null>;
};

export const firstWish = (file: string): ImportWish => ({
  // GLB says its unit by its standard (glTF 2.0, 3.4: metres); the others say none.
  unit: /\.glb$/i.test(file) ? 'm' : null,
  kind: null,
  clearance: null,
  crop: null,
  thin: null,
  placing: 'as it lies',
  from: [null, null, null],
  to: [null, null, null],
});

/** A place of the design that can be met again on a scan of what it is bolted to. */
export type KnownPlace = { readonly key: string; readonly name: string; readonly at: Vec3 };

export function knownPlaces(header: Header): readonly KnownPlace[] {
  const ports = [...header.ports.values()].map(({ port, pose }) => ({
    key: `port ${port.id}`,
    name: `port ${port.id}, centre`,
    at: pose.position,
  }));
  const fasteners = (header.design.flanges ?? []).flatMap((flange) =>
    (flange.fasteners ?? []).map((f, k) => ({
      key: `fastener ${flange.id} ${k}`,
      name: `${f.kind} ${k + 1} of ${flange.id}`,
      at: f.position,
    })),
  );
  const merges = [...header.merges.values()].flatMap(({ merge, body }) => [
    { key: `merge ${merge.id}`, name: `${merge.id}, middle of its inlets`, at: body.position },
    {
      key: `outlet ${merge.id}`,
      name: `${merge.id}, middle of its outlet`,
      at: body.position.map((x, i) => x + body.length * body.axis[i]!) as unknown as Vec3,
    },
  ]);
  return [...ports, ...fasteners, ...merges];
}

export function placeOfTarget(target: Target | null, places: readonly KnownPlace[]): Vec3 | null {
  if (!target) return null;
  if ('key' in target) return places.find(({ key }) => key === target.key)?.at ?? null;
  return target.typed.every((x) => x !== null) ? (target.typed as unknown as Vec3) : null;
}

export const clearanceOf = ({ kind, clearance }: ImportWish): number | null =>
  clearance ?? surroundingKind(kind ?? '')?.clearance ?? null;

type Pose = NonNullable<NewMesh['pose']>;
export type Placing =
  /** `off`: what each point misses its place by, mm; null where nothing was placed. */
  | {
      readonly ok: true;
      readonly pose: Pose | null;
      readonly off: readonly number[] | null;
      readonly warning: string | null;
    }
  | { readonly ok: false; readonly wants: string | null; readonly problem: string | null };

const wants = (words: string): Placing => ({ ok: false, wants: words, problem: null });

export function placingOf(wish: ImportWish, places: readonly KnownPlace[]): Placing {
  if (wish.placing === 'as it lies') return { ok: true, pose: null, off: null, warning: null };
  const { unit, from } = wish;
  if (!unit) return wants('Say first in which unit the file is.');
  const at = from.indexOf(null);
  if (at >= 0) return wants(`Point ${at + 1}: click it on the scan.`);
  const to = wish.to.map((target) => placeOfTarget(target, places));
  const open = to.indexOf(null);
  if (open >= 0) return wants(`Point ${open + 1}: say where it is in the design.`);
  const found = poseFromPoints(from as Three<Vec3>, to as unknown as Three<Vec3>, unit);
  if ('refusal' in found) return { ok: false, wants: null, problem: found.refusal };
  return { ok: true, pose: found.pose, off: found.residuals, warning: found.warning };
}

export type Outcome =
  | {
      readonly ok: true;
      readonly mesh: NewMesh;
      readonly off: readonly number[] | null;
      /** Said beside it; it can be added all the same. */
      readonly warning: string | null;
    }
  | { readonly ok: false; readonly wants: string | null; readonly problem: string | null };

/** @param box round the mesh, in the file's own unit */
export function outcomeOf(file: string, box: Corners, wish: ImportWish, places: readonly KnownPlace[]): Outcome {
  const { unit, kind, crop, thin } = wish;
  if (!unit) return { ok: false, wants: 'Say in which unit the file is: by the size that it comes to.', problem: null };
  const k = MM_PER_UNIT[unit];
  if (crop && box[0].some((low, i) => crop[1][i]! < k * low || crop[0][i]! > k * box[1][i]!))
    return { ok: false, wants: null, problem: 'Nothing of the mesh reaches into the crop: widen it.' };
  const placing = placingOf(wish, places);
  if (!placing.ok) return placing;
  const clearance = clearanceOf(wish);
  return {
    ok: true,
    off: placing.off,
    warning: placing.warning,
    mesh: {
      file,
      unit,
      ...(placing.pose && { pose: placing.pose }),
      ...(crop && { crop }),
      ...(thin !== null && thin > 0 && { thin }),
      ...(kind !== null && { kind }),
      ...(clearance !== null && { clearance }),
    },
  };
}

/** The box in mm, sorted, to begin a crop with. */
export const cropAll = (box: Corners, unit: LengthUnit): Corners => [
  scale(box[0], MM_PER_UNIT[unit]),
  scale(box[1], MM_PER_UNIT[unit]),
];

export const withCorner = (crop: Corners, corner: 0 | 1, axis: 0 | 1 | 2, value: number): Corners => {
  const moved = crop[corner].map((x, i) => (i === axis ? value : x)) as unknown as Vec3;
  const [a, b] = corner === 0 ? [moved, crop[1]] : [crop[0], moved];
  // A corner pulled past the other becomes the other.
  return [0, 1].map((k) => a.map((x, i) => (k === 0 ? Math.min : Math.max)(x, b[i]!))) as unknown as Corners;
};

export const withThree = <T>(three: Three<T>, at: number, value: T): Three<T> =>
  three.map((old, i) => (i === at ? value : old)) as unknown as Three<T>;
