/**
 * A drawn or traced outline taken into a design: its curves told apart and laid over the flange's ports, then written as the
 * flange's outline, and where asked its holes as fasteners and its openings as the ports'. mm; the design's frame.
 */
import { MAX_OUTLINE } from '../../shared/design/limits';
import { DesignError } from '../../shared/design/refusal';
import type { Design, Fastener, Opening } from '../../shared/design/types';
import { holesFor, METRIC_THREADS } from '../../shared/stock/holes';
import type { Circle } from '../plane/fitCircle';
import { fitLoop } from '../plane/fitLoop';
import { selfCrossing } from '../plane/inside';
import { edges, type Loop, type Point2, sampleLoop } from '../plane/loop';
import { moveLoop, movePoint2, type Rigid } from '../plane/rigid';
import { DEGREES, RADIANS } from '../tolerance';
import { align } from './align';
import { fittedOpening } from './fittedOpening';
import { type FramedFlange, framedFlange, outOfFrame } from './flangeFrame';
import { type OtherScale, otherScale, scaleWords } from './otherScale';
import { place, type SortedLoops, sortLoops } from './sortLoops';

export type PlacingOptions = {
  /** Where the drawing's origin lies in the flange's frame, and how far it is turned, degrees. Default: by the ports. */
  readonly offset?: { readonly shift: Point2; readonly turn?: number };
  /** Whether it was taken from the gasket's other side. Default: whichever fits; as it is where both do. */
  readonly mirrored?: boolean;
  /** Of ways that fit as well, the one that is turned most: the other way round. */
  readonly turned?: boolean;
};

export type PlacedOpening = {
  readonly port: string;
  readonly loop: Loop;
  /** Between its middle and the port's, mm. */
  readonly off: number;
  /** The nearest opening of a kind that a port can have, and how far the drawn one strays from it, mm. */
  readonly nearest: Opening;
  readonly stray: number;
};

/** All in the flange's frame. */
export type PlacedDrawing = {
  readonly flange: string;
  readonly outline: Loop;
  readonly openings: readonly PlacedOpening[];
  readonly holes: readonly Circle[];
  /** Cuts that are neither. */
  readonly others: readonly Loop[];
  readonly rigid: Rigid;
  /** Root mean square of the openings' distances from the ports, and the worst, mm; null where it was placed by an offset. */
  readonly fit: { readonly mean: number; readonly worst: number } | null;
  /** What someone should know, a sentence each. */
  readonly notes: readonly string[];
};

/** Openings farther off than this do not fit their ports, mm. */
const MOST_OFF = 10;
/** Worth saying, mm. */
const NOTABLE = 1;
const NOTABLE_STRAY = 0.5;

/**
 * @param loops in the drawing's own frame, mm, y up
 * @throws DesignError naming the place in the drawing or the design, and what would mend it
 */
export function placeDrawing(
  design: Design,
  flangeId: string,
  loops: readonly Loop[],
  options: PlacingOptions = {},
): PlacedDrawing {
  const flange = framedFlange(design, flangeId);
  const sorted = sortLoops(loops);
  insistUncrossed(sorted);
  const laid = options.offset
    ? byOffset(flange, sorted, options)
    : align(flange, sorted.cuts, options.mirrored, options.turned);
  const { rigid } = laid;
  const worst = Math.max(0, ...laid.matches.map(({ off }) => off));
  const scale = options.offset || worst <= NOTABLE ? null : scaleFor(flange, sorted, laid, worst);
  if (!options.offset && worst > MOST_OFF) refuseFit(flange, laid.matches, worst, scale);
  const own = new Set(laid.matches.map(({ cut }) => cut));
  const openings = laid.matches.flatMap(({ cut, off }, k): PlacedOpening[] => {
    if (cut < 0) return [];
    const { port } = flange.ports[k]!;
    const loop = moveLoop(sorted.cuts[cut]!.loop, rigid);
    return [{ port: port.id, loop, off, ...fittedOpening(loop, flange.frame, port) }];
  });
  const rest = sorted.cuts.filter((_, k) => !own.has(k));
  const holes = rest.flatMap(({ circle }) =>
    circle ? [{ centre: movePoint2(circle.centre, rigid), radius: circle.radius }] : [],
  );
  const others = rest.flatMap(({ circle, loop }) => (circle ? [] : [moveLoop(loop, rigid)]));
  const { outline, note } = withinLimit(moveLoop(sorted.outline, rigid));
  const squares = laid.matches.reduce((sum, { off }) => sum + off * off, 0);
  return {
    flange: flangeId,
    outline,
    openings,
    holes,
    others,
    rigid,
    fit: options.offset ? null : { mean: Math.sqrt(squares / laid.matches.length), worst },
    notes: [
      ...(rigid.mirrored && options.mirrored === undefined
        ? ['It fits turned over: it was drawn or scanned from the other side.']
        : []),
      ...(laid.alike.length > 0
        ? [`It would fit as well ${laid.alike.join(', or ')}: check which way round it is.`]
        : []),
      ...(scale ? [`${scaleWords(scale)}${scale.sure ? '' : ', and the ports'}.`] : []),
      ...openings
        .filter(({ off }) => off > NOTABLE && !scale?.sure)
        .map(({ port, off }) => `The opening of ${port} lies ${words(off)} mm from the port: measure the port again.`),
      ...openings
        .filter(({ stray }) => stray > NOTABLE_STRAY)
        .map(
          ({ port, nearest, stray }) =>
            `The opening of ${port} strays up to ${words(stray)} mm from the nearest ${SHAPES[nearest.shape]}.`,
        ),
      ...(others.length > 0
        ? [
            `${others.length} more ${others.length === 1 ? 'opening is' : 'openings are'} no port's and no round hole, and left out.`,
          ]
        : []),
      ...(sorted.nested > 0
        ? [`${sorted.nested} ${sorted.nested === 1 ? 'curve' : 'curves'} within openings or holes left out.`]
        : []),
      ...(note ? [note] : []),
    ],
  };
}

const SHAPES: Readonly<Record<Opening['shape'], string>> = {
  round: 'round opening',
  'rounded-rectangle': 'rounded rectangle',
  oval: 'oval',
};

const lower = (text: string): string => text[0]!.toLowerCase() + text.slice(1);

const words = (mm: number): string => String(Math.round(mm * 100) / 100);

function insistUncrossed({ outline, cuts }: SortedLoops): void {
  for (const [loop, what] of [[outline, 'outline'], ...cuts.map(({ loop }) => [loop, 'opening'] as const)] as const) {
    const at = selfCrossing(loop);
    if (at)
      throw new DesignError([
        {
          path: `drawing at ${place(at)}`,
          found: `an ${what} that crosses itself`,
          allowed: 'one closed curve that does not meet itself: trim what overlaps there',
        },
      ]);
  }
}

type Laid = ReturnType<typeof align>;

/** Where the user says it lies; ports take the cut about them, where there is one. */
function byOffset(flange: FramedFlange, { cuts }: SortedLoops, { offset, mirrored = false }: PlacingOptions): Laid {
  const rigid: Rigid = { mirrored, turn: (offset!.turn ?? 0) * RADIANS, shift: offset!.shift };
  const taken = new Set<number>();
  const matches = flange.ports.map(({ at }) => {
    let [cut, off] = [-1, MOST_OFF];
    cuts.forEach(({ centre }, k) => {
      const [x, y] = movePoint2(centre, rigid);
      const away = Math.hypot(x - at[0], y - at[1]);
      if (away < off && !taken.has(k)) [cut, off] = [k, away];
    });
    taken.add(cut);
    return { cut, off: cut < 0 ? 0 : off };
  });
  return { rigid, matches, alike: [] };
}

const scaleFor = ({ ports }: FramedFlange, { cuts }: SortedLoops, { rigid, matches }: Laid, worst: number) =>
  otherScale(matches.map(({ cut }) => cuts[cut]!.centre), ports.map(({ at }) => at), rigid, worst); // biome-ignore format: one line

function refuseFit(
  { flange, ports }: FramedFlange,
  matches: Laid['matches'],
  worst: number,
  scale: OtherScale | null,
): never {
  const port = ports[matches.findIndex(({ off }) => off === worst)]!.port.id;
  throw new DesignError([
    {
      path: `flanges/${flange.id}/outline`,
      found: `an opening ${words(worst)} mm from port ${port} at the best fit`,
      allowed: `within ${MOST_OFF} mm: ${scale ? `${lower(scaleWords(scale))}, and the ports` : "check the drawing's unit or scale, and the port's position"}`,
    },
  ]);
}

/** Digits that a file of the drawing's own precision never had are dropped; what has too many corners is drawn in fewer. */
function withinLimit(loop: Loop): { outline: Loop; note: string | null } {
  const short = tidy(loop);
  if (short.length <= MAX_OUTLINE) return { outline: short, note: null };
  const points = sampleLoop(short, 0.005);
  for (let tolerance = 0.02; ; tolerance *= 2) {
    const fitted = fitLoop(points, { tolerance, step: 2 });
    if (fitted.loop.length > MAX_OUTLINE) continue;
    return {
      outline: tidy(fitted.loop),
      note: `The outline’s ${loop.length} corners are drawn in ${fitted.loop.length}, within ${words(fitted.stray)} mm.`,
    };
  }
}

/** Arcs of more than half a circle as two, which every reader takes; rounded to a millionth of a mm. */
const tidy = (loop: Loop): Loop =>
  edges(loop).flatMap(({ from, arc }, k): Loop[number][] => {
    const round = (x: number): number => Math.round(x * 1e6) / 1e6 + 0;
    if (!arc || Math.abs(arc.turn) <= Math.PI + 1e-9) return [[round(from[0]), round(from[1]), loop[k]![2]]];
    const middle = arc.start + arc.turn / 2;
    const half = Math.tan(arc.turn / 8);
    const [x, y] = [arc.centre[0] + arc.radius * Math.cos(middle), arc.centre[1] + arc.radius * Math.sin(middle)];
    return [
      [round(from[0]), round(from[1]), half],
      [round(x), round(y), half],
    ];
  });

export type TakeOptions = {
  /** Holes become the flange's fasteners, in place of those that it has. */
  readonly fasteners?: boolean;
  /** Openings become the ports'. */
  readonly openings?: boolean;
};

/** The design with the outline, and what else was asked for. */
export function takeDrawing(design: Design, drawing: PlacedDrawing, { fasteners, openings }: TakeOptions = {}): Design {
  const flange = framedFlange(design, drawing.flange);
  const next = {
    ...flange.flange,
    outline: drawing.outline,
    ...(fasteners ? { fasteners: fastenersOf(flange, drawing.holes) } : {}),
  };
  const fitted = new Map(drawing.openings.map(({ port, nearest }) => [port, nearest]));
  return {
    ...design,
    ...(openings
      ? { ports: design.ports.map((p) => (fitted.has(p.id) ? { ...p, opening: fitted.get(p.id)! } : p)) }
      : {}),
    flanges: design.flanges!.map((f) => (f.id === drawing.flange ? next : f)),
  };
}

/** Farther than this from a hole, mm, a fastener is another one. */
const SAME_FASTENER = 8;

/** One for each hole: the fastener that was nearest, moved there; else one like its neighbours, by the hole's size. */
function fastenersOf({ flange, frame, fasteners: at }: FramedFlange, holes: readonly Circle[]): Fastener[] {
  const had = flange.fasteners ?? [];
  const pairs = had
    .flatMap((_, f) =>
      holes.map((hole, h) => ({ f, h, away: Math.hypot(at[f]![0] - hole.centre[0], at[f]![1] - hole.centre[1]) })),
    )
    .filter(({ away }) => away <= SAME_FASTENER)
    .sort((a, b) => a.away - b.away);
  const holeOf = new Map<number, number>();
  const taken = new Set<number>();
  for (const { f, h } of pairs) {
    if (holeOf.has(f) || taken.has(h)) continue;
    holeOf.set(f, h);
    taken.add(h);
  }
  const put = (h: number, like: Omit<Fastener, 'position' | 'hole'>): Fastener => {
    const { centre, radius } = holes[h]!;
    const round = (x: number): number => Math.round(x * 1e4) / 1e4 + 0;
    const [x, y, z] = outOfFrame(frame, centre, 0);
    return { ...like, position: [round(x), round(y), round(z)], hole: round(2 * radius) };
  };
  const kept = had.flatMap((fastener, f) => (holeOf.has(f) ? [put(holeOf.get(f)!, fastener)] : []));
  const left = [...holes.keys()].filter((h) => !taken.has(h)).sort((a, b) => holes[a]!.centre[0] - holes[b]!.centre[0]);
  const fresh = left.map((h) => put(h, { kind: had[0]?.kind ?? 'stud', thread: threadFor(2 * holes[h]!.radius) }));
  return [...kept, ...fresh];
}

/** The thread whose usual clearance hole (ISO 273, medium) is nearest. */
function threadFor(hole: number): string {
  const away = (thread: string) => Math.abs(holesFor(thread)![1] - hole);
  return METRIC_THREADS.reduce((best, thread) => (away(thread) < away(best) ? thread : best));
}

/** How the drawing was moved, for people: `turned 3.20°, shifted 12.5 across and −4 up, turned over`. */
export function rigidWords({ mirrored, turn, shift }: Rigid): string {
  const angle = Math.atan2(Math.sin(turn), Math.cos(turn)) * DEGREES;
  const over = mirrored ? 'turned over, then ' : '';
  return `${over}turned ${(angle + 0).toFixed(2)}° to the left, shifted ${words(shift[0])} mm across and ${words(shift[1])} mm up`;
}
