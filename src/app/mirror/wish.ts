/**
 * What is asked for when a bank is mirrored, and what comes of it. Null in the wish: the usual, which follows whatever else
 * is changed. mm, design frame. No React.
 */
import {
  add,
  addScaled,
  chosenCylinders,
  dot,
  engineWords,
  type MirrorOptions,
  mirrorBank,
  norm,
  type Opposite,
  type Plane,
  scale,
  sub,
  unit,
  usualOpposite,
  usualSurroundings,
} from '../../../geometry';
import { DesignError, type Refusal } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { refusalWords } from '../inspect/applyEdit';
import { listed } from './words';

export type MirrorWish = {
  /** Of the engine's, from 1; null: every cylinder that has a port. */
  readonly bank: number | null;
  readonly point: Vec3 | null;
  readonly normal: Vec3;
  /** The cylinders opposite that were typed. */
  readonly cylinders: Opposite;
  readonly surroundings: readonly string[] | null;
};

/** The fields that a refusal can be about. */
export type Place = 'bank' | 'plane' | 'normal' | `cylinder ${number}` | `surrounding ${string}` | 'rest';

export type Outcome =
  | { readonly ok: true; readonly design: Design; readonly adds: string; readonly engine: string | null }
  | { readonly ok: false; readonly problems: ReadonlyMap<Place, string> };

const UPRIGHT: Vec3 = [0, 1, 0];
/** From one bank's flange faces to the other's where nothing tells, mm: a place to start from, to be measured. */
const APART = 480;
/** Nearer than this to the ports a plane is none between two banks, mm. */
const LEAST_AWAY = 40;

export function firstWish(design: Design): MirrorWish {
  const banks = design.engine?.banks ?? [];
  const first = banks.findIndex((bank) => design.ports.some((p) => bank.includes(p.cylinder)));
  const bank = banks.length > 1 && first >= 0 ? first + 1 : null;
  return { bank, point: null, normal: UPRIGHT, cylinders: new Map(), surroundings: null };
}

/** Cylinders and surroundings are a bank's own: another bank starts from its usual ones. */
export const withBank = (wish: MirrorWish, bank: number | null): MirrorWish => ({
  ...wish,
  bank,
  cylinders: new Map(),
  surroundings: null,
});

/** Each cylinder that is mirrored; none where the bank has no ports. */
export function cylindersOf(design: Design, { bank }: MirrorWish): readonly number[] {
  try {
    return [...new Set(chosenCylinders(design, bank ?? undefined))];
  } catch (error) {
    if (error instanceof DesignError) return [];
    throw error;
  }
}

export const usualCylinders = (design: Design, wish: MirrorWish): Opposite =>
  usualOpposite(design, cylindersOf(design, wish));

export const surroundingsOf = (design: Design, wish: MirrorWish): readonly string[] =>
  wish.surroundings ?? usualSurroundings(design, cylindersOf(design, wish)).map(({ id }) => id);

export function planeOf(design: Design, wish: MirrorWish): Plane {
  return { point: wish.point ?? usualPoint(design, wish).point, normal: wish.normal };
}

/** The origin where that lies clear of the ports, behind them; else a guess. */
export function usualPoint(design: Design, wish: MirrorWish): { readonly point: Vec3; readonly guessed: boolean } {
  const n = unitOf(wish.normal);
  const bank = portsOf(design, wish);
  const origin: Vec3 = [0, 0, 0];
  if (!n || bank.length === 0) return { point: origin, guessed: false };
  const side = sideOf(design, wish, n);
  if (bank.every((p) => side * dot(p.position, n) > LEAST_AWAY)) return { point: origin, guessed: false };
  const nearest = Math.min(...bank.map((p) => side * dot(p.position, n)));
  return { point: along(origin, n, side * (nearest - APART / 2)), guessed: true };
}

/** From the bank's ports, in their middle, square through the plane to their images. Null where the plane has no direction. */
export function apartOf(design: Design, wish: MirrorWish): number | null {
  const n = unitOf(wish.normal);
  const middle = middleOf(portsOf(design, wish).map((p) => p.position));
  return n && middle && 2 * Math.abs(dot(sub(middle, planeOf(design, wish).point), n));
}

/** The plane moved along its own direction, on the side of the ports that it lies on. */
export function withApart(design: Design, wish: MirrorWish, apart: number): MirrorWish {
  const n = unitOf(wish.normal);
  const middle = middleOf(portsOf(design, wish).map((p) => p.position));
  if (!n || !middle) return wish;
  const { point } = planeOf(design, wish);
  const away = dot(sub(middle, point), n);
  const side = Math.sign(away) || sideOf(design, wish, n);
  return { ...wish, point: along(point, n, away - (side * apart) / 2) };
}

export function outcomeOf(design: Design, wish: MirrorWish): Outcome {
  if (!unitOf(wish.normal))
    return { ok: false, problems: new Map([['normal', 'No direction: one of the three must not be 0.']]) };
  const options: MirrorOptions = {
    ...(wish.bank === null ? {} : { bank: wish.bank }),
    cylinders: new Map([...usualCylinders(design, wish), ...wish.cylinders]),
    plane: planeOf(design, wish),
    surroundings: surroundingsOf(design, wish),
  };
  try {
    const mirrored = mirrorBank(design, options);
    const adds = listed(design, mirrored);
    return { ok: true, design: mirrored, adds, engine: engineWords(design, mirrored, 'then') };
  } catch (error) {
    if (error instanceof DesignError) return { ok: false, problems: placed(design, error.problems) };
    throw error;
  }
}

/** One sentence for each field, its first refusal; those of the plane together, as they have one cause. */
function placed(design: Design, refusals: readonly Refusal[]): ReadonlyMap<Place, string> {
  const problems = new Map<Place, string>();
  const onPorts: string[] = [];
  for (const refusal of refusals) {
    const [list, id = '', field] = refusal.path.split('/');
    const port = list === 'ports' ? design.ports.find((p) => p.id === id) : undefined;
    const put = (place: Place) => {
      if (!problems.has(place)) problems.set(place, refusalWords(refusal, refusal.path));
    };
    if (port && field === 'position') onPorts.push(id);
    else if (port && field === 'cylinder') put(`cylinder ${port.cylinder}`);
    else if (list === 'plane') put('plane');
    else if (list === 'engine') put('bank');
    else if (list === 'surroundings' && id !== '') put(`surrounding ${id}`);
    else if (!problems.has('rest')) problems.set('rest', refusalWords(refusal));
  }
  if (onPorts.length > 0)
    problems.set(
      'plane',
      `Too near: the ${onPorts.length === 1 ? 'image' : 'images'} of ${onPorts.join(', ')} would lie on ports that are there. Put the plane midway between the banks.`,
    );
  return problems;
}

function portsOf(design: Design, wish: MirrorWish): Design['ports'] {
  const cylinders = cylindersOf(design, wish);
  return design.ports.filter((p) => cylinders.includes(p.cylinder));
}

/** Which way along the plane's direction the ports look: the other bank lies behind them. */
function sideOf(design: Design, wish: MirrorWish, n: Vec3): 1 | -1 {
  const looks = portsOf(design, wish).reduce((sum, p) => sum + dot(p.direction, n), 0);
  return looks < 0 ? -1 : 1;
}

/** Without a minus before nothing: these numbers are shown. */
function along(p: Vec3, n: Vec3, by: number): Vec3 {
  const [x, y, z] = addScaled(p, n, by);
  return [x + 0, y + 0, z + 0];
}

const unitOf = (v: Vec3): Vec3 | null => (norm(v) > 0 ? unit(v) : null);

const middleOf = (places: readonly Vec3[]): Vec3 | null =>
  places.length === 0 ? null : scale(places.reduce(add), 1 / places.length);
