/**
 * Every place of a header with the ways to it and what stands in them. What does not hang on the runners is worked out once for as
 * long as it stays: a hand on a bend asks again at every step. mm.
 */
import { remembered, rememberedByParts } from '../../shared/remember';
import { WORKING_CLEARANCE } from '../../shared/stock/tools';
import type { Meshes } from '../check/meshes';
import { obstaclesOf } from '../check/obstacles';
import { frustumShape } from '../clearance/shapes';
import type { Header, ResolvedMerge } from '../header/resolve';
import { cloudsOf } from './cloud';
import { type Fixed, fixedOn, holds, type Solid, solidsOf } from './fixed';
import type { Scene } from './judge';
import { type Near, nearTo } from './local';
import { type Place, placesOf } from './place';
import { platesOf } from './plates';
import { type Way, waysTo } from './ways';

export type Spot = {
  readonly place: Place;
  readonly ways: readonly { readonly way: Way; readonly fixed: readonly Fixed[] }[];
  /** How far from the axis and how high the ways reach. */
  readonly out: number;
  readonly up: number;
};

type Asked = { readonly header: Header; readonly meshes: Meshes };

const spotsByParts = rememberedByParts(
  ({ header, meshes }: Asked): readonly unknown[] => {
    const { flanges, service, access, ports } = header.design;
    return [flanges, service, access, ports, meshes, header.surroundings, ...header.merges.values()];
  },
  ({ header, meshes }: Asked) => spotsAmong(header, meshes),
);

export const spotsOf = (header: Header, meshes: Meshes): readonly Spot[] => spotsByParts({ header, meshes });

const collectorSolid = remembered(
  ({ merge, body }: ResolvedMerge): Solid => ({ id: merge.id, shape: frustumShape(body) }),
);

function spotsAmong(header: Header, meshes: Meshes): Spot[] {
  const places = placesOf(header);
  const around: Solid[] = [
    ...obstaclesOf(header, meshes).obstacles.map(({ surrounding, shape }) => ({ id: surrounding.id, shape })),
    ...[...header.merges.values()].map(collectorSolid),
  ];
  const bodies = places.map(solidsOf);
  const plates = platesOf(header);
  return places.map((place, i): Spot => {
    const solids = [
      ...around.filter((solid) => !holds(solid, place)),
      ...bodies.flatMap((own, k) => (k === i ? [] : own)),
      // Its own plate is what it stands on.
      ...plates.flatMap((plate) => (plate.flange === place.flange ? [] : plate.solids)),
    ];
    const ways = waysTo(place, header.design.access).map((way) => ({
      way,
      fixed: way.unfit === null ? solids.flatMap((s) => fixedOn(place, way, s, WORKING_CLEARANCE) ?? []) : [],
    }));
    const bars = ways.flatMap(({ way }) => way.bars);
    const arms = ways.flatMap(({ way }) => [...way.arms, ...way.approach]);
    return {
      place,
      ways,
      out: Math.max(0, ...bars.map((b) => b.radius), ...arms.map((a) => a.length + a.radius)),
      up: Math.max(0, ...bars.map((b) => b.to), ...arms.map((a) => a.height + a.length * Math.sin(a.rise) + a.radius)),
    };
  });
}

export type Seen = { readonly spot: Spot; readonly near: Near; sceneOf(fixed: readonly Fixed[]): Scene };

/** @param all every runner wrapped from end to end, whatever the design says */
export function seen(header: Header, meshes: Meshes, all = false): Seen[] {
  const clouds = cloudsOf(header, all);
  return spotsOf(header, meshes).map((spot) => {
    const near = nearTo(spot.place.axes, clouds, spot.out, spot.up, WORKING_CLEARANCE);
    return { spot, near, sceneOf: (fixed) => ({ near, fixed, room: WORKING_CLEARANCE }) };
  });
}
