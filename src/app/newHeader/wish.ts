/**
 * What is asked for on the page of a new header: the few numbers a builder has at hand. Null stands for "the usual", which
 * follows the other answers until a number is typed over it. mm, degrees, rpm, °C, whatever the unit shown. No React.
 */
import type { Display, Opening, Tooling } from '../../../shared/design/types';
import type { Arrangement } from '../../../shared/engine/form';
import type { Vec3 } from '../../../shared/vec3';

export type CollectorWish = {
  readonly position: Vec3 | null;
  readonly axis: Vec3 | null;
  readonly outletDiameter: number | null;
  readonly length: number | null;
};

export type TubeWish = {
  readonly outsideDiameter: number | null;
  readonly wall: number;
  /** Null: any length, but equal. */
  readonly length: number | null;
  readonly centerlineRadius: number | null;
};

export type ToolingWish = Pick<
  Tooling,
  'firstStraight' | 'betweenStraight' | 'lastStraight' | 'maxBendAngle' | 'maxBends'
> & { readonly making: 'bent' | 'welded' };

export type Wish = {
  readonly title: string | null;
  readonly display: Display;

  readonly cylinders: number;
  readonly banks: 1 | 2;
  /** Between two banks, degrees. */
  readonly vee: number | null;
  readonly firingOrder: readonly number[] | null;
  readonly bore: number;
  readonly stroke: number;
  readonly rpm: readonly [number, number];
  /** The speed to tune for. */
  readonly tuned: number | null;
  /** Crank degrees from top dead centre of the exhaust stroke, as camshaft makers give them: before the bottom, after the top. */
  readonly exhaustOpensBefore: number | null;
  readonly exhaustClosesAfter: number | null;
  readonly gasTemperature: number | null;

  readonly pitch: number | null;
  /** Which end of the head cylinder 1 stands at, and which side the ports of a single bank look to. */
  readonly firstAt: 'low' | 'high';
  readonly side: 1 | -1;
  /** Flange face from the crankshaft: above it, and out from it. */
  readonly height: number;
  readonly reach: number | null;
  readonly opening: Opening | null;
  readonly angle: number;
  readonly lengthInHead: number;

  readonly arrangement: Arrangement;
  /** All into one collector instead of one for each bank, or each three of a straight six. */
  readonly oneCollector: boolean;

  readonly primary: TubeWish;
  readonly secondary: TubeWish;
  readonly tooling: ToolingWish;
  readonly material: string;
  /** By collector; shorter than the list of collectors where nothing was typed. */
  readonly collectors: readonly CollectorWish[];
};

const TUBE: TubeWish = { outsideDiameter: null, wall: 1.5, length: null, centerlineRadius: null };

/** A common four, so that Make can be pressed at once. */
export const FIRST_WISH: Wish = {
  title: null,
  display: 'mm',
  cylinders: 4,
  banks: 1,
  vee: null,
  firingOrder: null,
  bore: 82,
  stroke: 85,
  rpm: [1500, 7000],
  tuned: null,
  exhaustOpensBefore: null,
  exhaustClosesAfter: null,
  gasTemperature: null,
  pitch: null,
  firstAt: 'low',
  side: 1,
  height: 0,
  reach: null,
  opening: null,
  angle: 10,
  lengthInHead: 80,
  arrangement: 'all-into-one',
  oneCollector: false,
  primary: TUBE,
  secondary: TUBE,
  tooling: {
    making: 'welded',
    firstStraight: 20,
    betweenStraight: 20,
    lastStraight: 20,
    maxBendAngle: 170,
    maxBends: 4,
  },
  material: 'stainless-304',
  collectors: [],
};

const AS_USUAL: CollectorWish = { position: null, axis: null, outletDiameter: null, length: null };

export const collectorWish = (wish: Wish, index: number): CollectorWish => wish.collectors[index] ?? AS_USUAL;

/** Changes one collector's wish. */
export function withCollector(wish: Wish, index: number, change: Partial<CollectorWish>): Wish {
  const count = Math.max(wish.collectors.length, index + 1);
  const collectors = Array.from({ length: count }, (_, i) =>
    i === index ? { ...collectorWish(wish, i), ...change } : collectorWish(wish, i),
  );
  return { ...wish, collectors };
}

/** Another engine layout: what was typed about the old one's order, banks and collectors no longer means anything. */
export function withEngine(wish: Wish, change: Partial<Pick<Wish, 'cylinders' | 'banks'>>): Wish {
  const cylinders = change.cylinders ?? wish.cylinders;
  // Eight and more usually stand in two banks, up to six in one; a choice of banks made along with it stands.
  const usual = cylinders >= 8 ? 2 : 1;
  const asked = change.banks ?? (change.cylinders === undefined ? wish.banks : usual);
  const banks = cylinders < 2 ? 1 : asked;
  const next: Wish = { ...wish, cylinders, banks, vee: null, firingOrder: null, collectors: [], oneCollector: false };
  const each = cylinders / banks;
  const first = next.arrangement === 'pairs-then-one' ? 2 : 3;
  const fits = next.arrangement === 'all-into-one' || (each % first === 0 && each > first);
  return fits ? next : { ...next, arrangement: 'all-into-one' };
}

/** Another number of collectors makes nonsense of where each one was put. */
export const withoutPlaces = (wish: Wish, change: Partial<Wish>): Wish => ({ ...wish, ...change, collectors: [] });
