/**
 * What was ticked off, each tick with the numbers that it was done by: a step whose numbers are others since is no longer done.
 * Written as JSON beside the design, read with care. Pure.
 */
import type { Figure, Step } from '../../shop/bench/step';

export type Tick = {
  /** When, ms since the epoch. */
  readonly at: number;
  /** The step's, for when it is no longer there. */
  readonly title: string;
  readonly figures: readonly Figure[];
};

export type Ticks = Readonly<Record<string, Tick>>;

export type Standing = 'open' | 'done' | 'changed';

/** One number that is another now; null where it is only on one side. */
export type Change = { readonly name: string; readonly was: Figure | null; readonly now: Figure | null };

/** Figures are rounded to what a tape reads: what differs by less is noise. */
const SAME = 1e-6;

function sameFigure(a: Figure, b: Figure): boolean {
  if (a.kind === 'words' || b.kind === 'words') return a.kind === b.kind && a.value === b.value;
  const way = (of: Figure): string => ('way' in of && of.way) || '';
  return a.kind === b.kind && Math.abs(a.value - b.value) < SAME && way(a) === way(b);
}

export function changesOf({ figures }: Pick<Step, 'figures'>, tick: Tick): readonly Change[] {
  const names = [...new Set([...figures, ...tick.figures].map(({ name }) => name))];
  return names.flatMap((name): Change[] => {
    const now = figures.find((f) => f.name === name) ?? null;
    const was = tick.figures.find((f) => f.name === name) ?? null;
    return now && was && sameFigure(now, was) ? [] : [{ name, was, now }];
  });
}

export function standingOf(step: Step, ticks: Ticks): Standing {
  const tick = Object.hasOwn(ticks, step.id) ? ticks[step.id]! : null;
  if (!tick) return 'open';
  return changesOf(step, tick).length > 0 ? 'changed' : 'done';
}

export const ticked = (ticks: Ticks, step: Step, at: number): Ticks => ({
  ...ticks,
  [step.id]: { at, title: step.title, figures: step.figures },
});

export const unticked = (ticks: Ticks, ids: readonly string[]): Ticks =>
  Object.fromEntries(Object.entries(ticks).filter(([id]) => !ids.includes(id)));

/** Ticked off, and no longer to be done: pieces that the design no longer has. */
export const goneOf = (steps: readonly Step[], ticks: Ticks): readonly (readonly [id: string, title: string])[] => {
  const there = new Set(steps.map(({ id }) => id));
  return Object.entries(ticks).flatMap(([id, { title }]) => (there.has(id) ? [] : [[id, title] as const]));
};

export type Progress = { readonly done: number; readonly changed: number; readonly all: number };

export function progressOf(steps: readonly Step[], ticks: Ticks): Progress {
  const standings = steps.map((step) => standingOf(step, ticks));
  const count = (of: Standing) => standings.filter((s) => s === of).length;
  return { done: count('done'), changed: count('changed'), all: steps.length };
}

/** The next step that is not done, from `after` on and round again; null where all are. */
export function nextOpen(steps: readonly Step[], ticks: Ticks, after: string | null): Step | null {
  const at = steps.findIndex(({ id }) => id === after);
  const round = [...steps.slice(at + 1), ...steps.slice(0, at + 1)];
  return round.find((step) => standingOf(step, ticks) !== 'done') ?? null;
}

/** What changed comes first: whoever has sawn by other numbers must hear of it before going on. */
export const firstToDo = (steps: readonly Step[], ticks: Ticks): Step | null =>
  steps.find((step) => standingOf(step, ticks) === 'changed') ?? nextOpen(steps, ticks, null) ?? steps[0] ?? null;

const FORMAT = 'evenrun-ticks';
const VERSION = 1;

export const writeTicks = (ticks: Ticks): string => JSON.stringify({ format: FORMAT, version: VERSION, ticks });

type Written = { readonly format?: unknown; readonly version?: unknown; readonly ticks?: unknown };

function parsed(text: string | null): Written | null {
  try {
    return JSON.parse(text ?? 'null') as Written | null;
  } catch {
    return null;
  }
}

/** Written by a later version of this app, which may know more of them than this one does. */
export function areOfLater(text: string | null): boolean {
  const found = parsed(text);
  return found?.format === FORMAT && typeof found.version === 'number' && found.version > VERSION;
}

/** None where the text is no ticks, or those of a later version of this app. */
export function readTicks(text: string | null): Ticks {
  const found = parsed(text);
  if (found?.format !== FORMAT || found.version !== VERSION || typeof found.ticks !== 'object') return {};
  return Object.fromEntries(
    Object.entries(found.ticks ?? {}).filter((entry): entry is [string, Tick] => isTick(entry[1])),
  );
}

function isTick(value: unknown): value is Tick {
  const { at, title, figures } = (value ?? {}) as Record<string, unknown>;
  return typeof at === 'number' && typeof title === 'string' && Array.isArray(figures) && figures.every(isFigure);
}

function isFigure(value: unknown): value is Figure {
  const { name, kind, value: own } = (value ?? {}) as Record<string, unknown>;
  if (typeof name !== 'string') return false;
  return kind === 'words'
    ? typeof own === 'string'
    : ['length', 'angle', 'count', 'size'].includes(String(kind)) && typeof own === 'number';
}
