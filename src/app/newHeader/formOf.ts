/**
 * From what was asked for to the engine form that a header is drawn from: what was left open is filled in by common
 * practice (shared/engine) and by the middle of the textbook sizes. mm, degrees. No React.
 */
import type { Opening } from '../../../shared/design/types';
import { type CollectorForm, type EngineForm, joinedFirst, type TubeForm } from '../../../shared/engine/form';
import { newForm, usualCollectors } from '../../../shared/engine/formDefaults';
import type { StartingSizes } from '../../../shared/engine/sizing/startingSizes';
import { usualEngine } from '../../../shared/engine/usualEngines';
import { type AskedLengths, hungFor } from './hang';
import { placedBanks } from './placing';
import { sizesFor, sizingOf, startOf, stepped } from './sizing';
import { nearestStock } from './stock';
import { collectorWish, type TubeWish, type Wish } from './wish';

export type Filled = {
  readonly form: EngineForm;
  /** Null where the answers are no engine. */
  readonly sizes: StartingSizes | null;
  /** What counts where nothing is typed. */
  readonly usual: Usual;
};

export type Usual = {
  readonly title: string;
  readonly vee: number;
  readonly tuned: number;
  readonly pitch: number;
  readonly reach: number;
  readonly opening: Opening;
  readonly firingOrder: readonly number[];
  readonly primary: TubeForm;
  readonly secondary: TubeForm;
  readonly collectors: readonly CollectorForm[];
};

/** A port is about this part of the bore across, to the millimetre: common practice. */
const PORT_SHARE = 0.44;
/** A stock bend's radius over the tube's diameter. */
const STOCK_BEND = 1.5;
/** Where no formula says how wide a secondary is. */
const SECONDARY_STEP = 1.2;

export function filled(wish: Wish): Filled {
  const usualOpening: Opening = { shape: 'round', diameter: Math.round(wish.bore * PORT_SHARE) };
  const opening = wish.opening ?? usualOpening;
  const answered = newForm({
    cylinders: wish.cylinders,
    banks: wish.banks,
    ...(wish.vee !== null && { vee: wish.vee }),
    bore: wish.bore,
    ...(wish.pitch !== null && { pitch: wish.pitch }),
    arrangement: wish.arrangement,
    opening,
    portAngle: wish.angle,
    display: wish.display,
  });
  const banks = placedBanks(answered, wish);
  const sets = wish.oneCollector ? [banks.flatMap((b) => b.cylinders)] : undefined;
  const hung = (inlet: number) => usualCollectors(banks, wish.arrangement, inlet, sets);
  const joined = Math.max(...hung(0).map((c) => c.cylinders.length));

  const sizing = sizingOf(wish, opening, joined);
  const bore = startOf(sizesFor(sizing), 'primaryBore') ?? acrossOf(opening);
  const diameter = (tube: TubeWish, inside: number) => nearestStock(inside, tube.wall, wish.display);
  const primary = diameter(wish.primary, bore);
  const chosen = wish.primary.outsideDiameter ?? primary;
  // What follows the primary follows the tube that it is, not the bore that it might have been.
  const sizes = sizesFor({ ...sizing, primaryBore: chosen - 2 * wish.primary.wall });
  const secondary = diameter(wish.secondary, startOf(sizes, 'secondaryBore') ?? SECONDARY_STEP * chosen);

  const usualTube = (outsideDiameter: number, wall: number): TubeForm => ({
    tube: { outsideDiameter, wall, material: wish.material },
    tooling: { ...wish.tooling, centerlineRadius: tidy(STOCK_BEND * outsideDiameter) },
    length: null,
  });
  const tubes = {
    primary: usualTube(primary, wish.primary.wall),
    secondary: usualTube(secondary, wish.secondary.wall),
  };
  const staged = joinedFirst(wish.arrangement) !== null;
  const inlet = staged ? (wish.secondary.outsideDiameter ?? secondary) : chosen;
  const outlet = startOf(sizes, 'outletBore');
  const length = startOf(sizes, 'collectorLength');
  const collectors = hungFor(hung(inlet), banks, lengthsAsked(wish, staged)).map(
    (c): CollectorForm => ({
      ...c,
      ...(outlet !== null && { outletDiameter: nearestStock(outlet, wish.primary.wall, wish.display) }),
      ...(length !== null && { length: stepped(length) }),
    }),
  );
  const title = titleOf(answered.title, wish);
  return {
    sizes,
    form: {
      ...answered,
      title: wish.title ?? title,
      banks,
      firingOrder: wish.firingOrder ?? answered.firingOrder,
      stroke: wish.stroke,
      rpm: wish.rpm,
      port: { ...answered.port, lengthInHead: wish.lengthInHead },
      primary: asked(tubes.primary, wish.primary),
      secondary: staged ? asked(tubes.secondary, wish.secondary) : null,
      collectors: collectors.map((c, i) => withoutNulls(c, collectorWish(wish, i))),
    },
    usual: {
      title,
      vee: usualEngine(wish.cylinders, wish.banks)?.vee || 90,
      tuned: sizingOf({ ...wish, tuned: null }, opening, joined).rpm,
      pitch: newForm({ cylinders: 2, bore: wish.bore }).banks[0]!.pitch,
      reach: Math.abs(answered.banks[0]!.firstPort[1]),
      opening: usualOpening,
      firingOrder: answered.firingOrder,
      ...tubes,
      collectors,
    },
  };
}

/** Of tube from flange to collector, as far as it was asked for. */
const lengthsAsked = ({ primary, secondary, lengthInHead }: Wish, joined: boolean): AskedLengths => ({
  first: primary.length === null ? null : primary.length - lengthInHead,
  second: secondary.length,
  joined,
});

const acrossOf = (opening: Opening): number => (opening.shape === 'round' ? opening.diameter : opening.width);

function asked(usual: TubeForm, wish: TubeWish): TubeForm {
  const outsideDiameter = wish.outsideDiameter ?? usual.tube.outsideDiameter;
  return {
    tube: { ...usual.tube, outsideDiameter },
    tooling: { ...usual.tooling, centerlineRadius: wish.centerlineRadius ?? tidy(STOCK_BEND * outsideDiameter) },
    length: wish.length,
  };
}

/** What was typed over what is usual. */
const withoutNulls = <T extends object>(usual: T, typed: { readonly [K in keyof T]?: T[K] | null }): T => ({
  ...usual,
  ...(Object.fromEntries(Object.entries(typed).filter(([, value]) => value !== null)) as Partial<T>),
});

const WAYS = { 'all-into-one': '', 'pairs-then-one': ', pairs first', 'threes-then-one': ', threes first' } as const;
const titleOf = (engine: string, wish: Wish): string => `${engine}${WAYS[wish.arrangement]}`;

/** A tenth of a millimetre. */
const tidy = (mm: number): number => Math.round(mm * 10) / 10;
