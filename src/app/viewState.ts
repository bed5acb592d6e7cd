/**
 * How the 3D view is being looked at: what is hidden, where it is cut or
 * taken apart, what is being measured. Lives in the session: never
 * saved, never undone, forgotten when another design is opened. Keys name things as paths do: `runner/r1`, `merge/m1`.
 */
import { create } from 'zustand';
import type { Thing } from '../../geometry/measure/thing';
import { whenOpened } from './document';
import type { Ref } from './session';

export type HideKey = `${'runner' | 'merge' | 'flange' | 'surrounding'}/${string}`;

/** The whole thing that a reference is part of, as far as it can be hidden; null for what cannot. */
export function hideKey(ref: Ref | null): HideKey | null {
  switch (ref?.kind) {
    case 'runner':
    case 'merge':
    case 'flange':
    case 'surrounding':
      return `${ref.kind}/${ref.id}`;
    case 'fastener':
      return `flange/${ref.id}`;
    default:
      return null;
  }
}

export const AXES = ['x', 'y', 'z'] as const;
export type Axis = (typeof AXES)[number];

/** A plane square to an axis; what lies beyond it is not drawn. */
export type Cut = {
  readonly on: boolean;
  /** Where the plane meets its axis, mm; null until one is chosen: through the middle of what is shown. */
  readonly at: number | null;
  /** Cuts away what lies below the plane instead of above it. */
  readonly flip: boolean;
};

/** What a click takes while measuring: the whole thing, the bend or straight, or the very place. */
export const GRAINS = ['whole', 'part', 'place'] as const;
export type Grain = (typeof GRAINS)[number];

/** Two things measured against each other; `key` is unique within the session. */
export type Measuring = { readonly key: number; readonly a: Thing; readonly b: Thing };

type ViewState = {
  /** Without perspective, as on a drawing. */
  readonly parallel: boolean;
  readonly hidden: ReadonlySet<string>;
  /** When not null, only these are shown, less what is hidden. */
  readonly only: ReadonlySet<string> | null;
  readonly cuts: Readonly<Record<Axis, Cut>>;
  /** How far the parts are drawn apart: 0 put together, 1 as far as it goes. Nothing is measured or shaped meanwhile. */
  readonly exploded: number;
  /** Whether a click takes something to measure from or to. */
  readonly measuring: boolean;
  readonly grain: Grain;
  /** What the next click will be measured against. */
  readonly from: Thing | null;
  /** Kept until cleared, the newest last. */
  readonly measured: readonly Measuring[];
  /** Hides, or shows again, whatever else is going on. */
  setHidden(keys: readonly string[], on: boolean): void;
  /** Shows these alone; null shows all. */
  isolate(keys: readonly string[] | null): void;
  setParallel(on: boolean): void;
  setCut(axis: Axis, change: Partial<Cut>): void;
  explode(share: number): void;
  setMeasuring(on: boolean): void;
  setGrain(grain: Grain): void;
  /** The first of two things is remembered, the second makes a measurement. */
  take(thing: Thing): void;
  forget(key: number): void;
  forgetAll(): void;
};

const UNCUT: Cut = { on: false, at: null, flip: false };
const PLAIN = {
  hidden: new Set<string>(),
  only: null,
  cuts: { x: UNCUT, y: UNCUT, z: UNCUT },
  exploded: 0,
  measuring: false,
  from: null,
  measured: [],
};

export const useViewState = create<ViewState>()((set) => ({
  parallel: false,
  grain: 'whole',
  ...PLAIN,
  setHidden: (keys, on) =>
    set(({ hidden, only }) => ({
      hidden: on ? new Set([...hidden, ...keys]) : new Set([...hidden].filter((k) => !keys.includes(k))),
      only: only && (on ? new Set([...only].filter((k) => !keys.includes(k))) : new Set([...only, ...keys])),
    })),
  isolate: (keys) => set({ hidden: new Set(), only: keys && new Set(keys) }),
  setParallel: (parallel) => set({ parallel }),
  setCut: (axis, change) => set(({ cuts }) => ({ cuts: { ...cuts, [axis]: { ...cuts[axis], ...change } } })),
  setGrain: (grain) => set({ grain }),
  explode: (share) => set(share > 0 ? { exploded: Math.min(1, share), measuring: false, from: null } : { exploded: 0 }),
  setMeasuring: (measuring) => set({ measuring, from: null, ...(measuring && { exploded: 0 }) }),
  take: (thing) =>
    set(({ from, measured }) =>
      from
        ? { from: null, measured: [...measured, { key: (measured.at(-1)?.key ?? 0) + 1, a: from, b: thing }] }
        : { from: thing },
    ),
  forget: (key) => set(({ measured }) => ({ measured: measured.filter((m) => m.key !== key) })),
  forgetAll: () => set({ measured: [], from: null }),
}));

export const isHidden = ({ hidden, only }: Pick<ViewState, 'hidden' | 'only'>, key: string | null): boolean =>
  key !== null && (hidden.has(key) || (only !== null && !only.has(key)));

/** Whether a part of the design is hidden now. */
export const useIsHidden = (ref: Ref): boolean => useViewState((s) => isHidden(s, hideKey(ref)));

whenOpened(() => useViewState.setState(PLAIN));
