/** What can be taken hold of in the 3D view. Bends and straights are counted from 0 as the bender and the saw see them. */

export type Handle =
  | { readonly kind: 'bend'; readonly runner: string; readonly bend: number }
  /** A bend along the straight before it or after it, which keeps its line. */
  | { readonly kind: 'slide'; readonly runner: string; readonly bend: number; readonly along: 'in' | 'out' }
  /** `run`: the straight parallel to itself; `turn`: the bends beyond it about its line; `add`: a new bend out of it. */
  | { readonly kind: 'run' | 'turn' | 'add'; readonly runner: string; readonly straight: number }
  | { readonly kind: 'merge' | 'port' | 'surrounding'; readonly id: string }
  /** Tilt about the collector's up, tilt about its side, twist about its axis. */
  | { readonly kind: 'tilt'; readonly id: string; readonly about: 'up' | 'side' | 'axis' }
  | { readonly kind: 'capsule-end'; readonly id: string; readonly end: 'a' | 'b' }
  | { readonly kind: 'face'; readonly id: string; readonly axis: 0 | 1 | 2; readonly side: 'min' | 'max' };

/** Two handles are the same thing where their keys are. */
export const handleKey = (h: Handle): string => Object.values(h).join(' ');

export const sameHandle = (a: Handle | null, b: Handle | null): boolean =>
  a !== null && b !== null && handleKey(a) === handleKey(b);

const AXIS_NAMES = ['X', 'Y', 'Z'] as const;

/** As a step of history reads: a verb first. */
export function handleName(h: Handle): string {
  switch (h.kind) {
    case 'bend':
      return `Move bend ${h.bend + 1} of ${h.runner}`;
    case 'slide':
      return `Slide bend ${h.bend + 1} of ${h.runner}`;
    case 'run':
      return `Move straight ${h.straight + 1} of ${h.runner}`;
    case 'turn':
      return `Turn ${h.runner} about straight ${h.straight + 1}`;
    case 'add':
      return `Add a bend to ${h.runner}`;
    case 'merge':
      return `Move ${collectorName(h.id)}`;
    case 'tilt':
      return `${h.about === 'axis' ? 'Twist' : 'Tilt'} ${collectorName(h.id)}`;
    case 'port':
      return `Move port ${h.id}`;
    case 'surrounding':
      return `Move ${h.id}`;
    case 'capsule-end':
      return `Move one end of ${h.id}`;
    case 'face':
      return `Move the ${h.side === 'min' ? 'lower' : 'upper'} ${AXIS_NAMES[h.axis]} face of ${h.id}`;
  }
}

/** A collector that is called one already is not called so twice. */
const collectorName = (id: string): string => (/collector/i.test(id) ? id : `collector ${id}`);
