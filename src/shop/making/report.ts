/**
 * What is found about making the tubes: the answers that command line, tables, paper and app share. Data only. Lengths mm along
 * the centerline, angles degrees, masses kg, times minutes, money in the workshop's currency. A runner is a tube from port or
 * collector to collector; a tube group is what shares an entry of the design's `tubes`.
 */
import type { StockBar, StockBend } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';

export type Way = 'welded' | 'bent';

/** Something that a builder must know: where in the design, what with its numbers, what would make it work. */
export type Remark = {
  /** A path into the design, as in a problem's `where`: `workshop/bends`, `tooling/primary`, `runners/r1`. */
  readonly where: string;
  readonly message: string;
  /** It cannot be made as it stands; others are only to be known. */
  readonly stops: boolean;
};

/** What a tape's and a dial's least step cost when every cut and turn is rounded to them, measured at the tube's far end. */
export type Rounded = {
  /** The steps, mm and degrees. */
  readonly tape: number;
  readonly dial: number;
  /** Of the end's place, and of its direction, from nominal. */
  readonly position: number;
  readonly angle: number;
  /** By how much the centerline is longer than nominal. */
  readonly length: number;
};

// Welded up

/**
 * One piece, in the order of the gas: a bend with what is left of its legs, or straight tube. Nominal: marching straight `in`,
 * arc, straight `out` and turning by each joint's clocking rebuilds the centerline.
 */
export type Piece = {
  /** Unique in the header, as written on the metal: `r1-3`. */
  readonly id: string;
  readonly kind: 'bend' | 'straight';
  /** Straight before the arc; of a straight piece, all of it. */
  readonly in: number;
  /** 0 of a straight piece. */
  readonly angle: number;
  readonly radius: number;
  readonly out: number;
  /** The same two straights as they are sawn: with trims, and what weld gaps and shrinkage take and give. */
  readonly sawnIn: number;
  readonly sawnOut: number;
  /** Saw kerf, as degrees of this radius; 0 of a straight piece. */
  readonly kerfAngle: number;
};

/** Turned clockwise is positive, looking along the tube away from its start, whatever the workshop's sign: it is said in words. */
export type Joint = {
  /** Piece before it, counted from 0. */
  readonly after: number;
  /** Along the runner's centerline from its start. */
  readonly station: number;
  readonly position: Vec3;
  /** Along the gas. */
  readonly direction: Vec3;
  /** The next piece's scribed line from this piece's, (−180, 180], and the same round the tube's outside. */
  readonly turn: number;
  readonly around: number;
  /** The next piece's line from the zero line at the start, [0, 360), and the same round the outside. */
  readonly total: number;
  readonly totalAround: number;
  /** Straight on either side before a bend begins. */
  readonly before: number;
  readonly behind: number;
  /** Degrees round the tube where a torch has its room while all of this runner is there; 360: everywhere. */
  readonly torchFree: number;
  /** The same with every runner where it is laid: less than `torchFree` where it is better welded before those are in place. */
  readonly torchFreeInPlace?: number;
  /** What takes it: `this tube` or the ids of runners; empty where it has all. */
  readonly inTheWay: readonly string[];
};

export type WeldedTube = {
  readonly runner: string;
  readonly tube: string;
  readonly pieces: readonly Piece[];
  readonly joints: readonly Joint[];
  /**
   * The first piece's scribed line from the port's (or collector's) up, clockwise looking along the tube away from its start,
   * (−180, 180]; and the same round the outside. Lines are scribed along the outside of bends, away from their centre.
   */
  readonly start: { readonly turn: number; readonly around: number };
  /** How much farther in than its centerline (negative: farther out) the first piece begins, where it does; see `Part`. */
  readonly startTrim?: number;
  /** The workshop lists no bend of this tube: legs and angles are those of an assumed one. */
  readonly assumed?: true;
  /** Rounded: cuts to the tape, arcs and turns to the dial. */
  readonly rounded: Rounded;
  readonly remarks: readonly Remark[];
};

// Bent

/**
 * One a bend, then the straight that remains (angle, radius and set 0). Of the real tube: a first straight that begins in a
 * flange's step or behind a transition is as long as it is on the tube.
 */
export type MachineRow = {
  /** As designed: the straight before the bend, the turn of its plane, right-handed about the direction counted in, the bend. */
  readonly length: number;
  readonly rotation: number;
  readonly angle: number;
  readonly radius: number;
  /**
   * Carriage travel before this bend: the straight, less what the bend before it stretched; trims included, the first counts from
   * the sawn end. Together with radius × angle of all bends they are the length sawn.
   */
  readonly feed: number;
  /** The rotation with the workshop's sign, and the dial after it, [0, 360). */
  readonly turn: number;
  readonly dial: number;
  /** What the bender is set to, so that `angle` is left once it has sprung back. */
  readonly set: number;
  /** From the sawn tube's end to where the bend begins, and to where it ends, on the straight tube; last: where the finished tube ends, and the sawn one. */
  readonly mark: number;
  readonly markEnd: number;
  /** Straight there is ahead of this bend for the clamp, trim included; last: behind the last bend, for the tail. */
  readonly grip: number;
  readonly clamps: boolean;
};

export type Thinned = {
  /** Counted from 1 along the runner. */
  readonly bend: number;
  readonly angle: number;
  readonly radius: number;
  /** Radius over outside diameter. */
  readonly ratio: number;
  /** Of the wall on the outside of the bend, percent, and what is left, mm. */
  readonly percent: number;
  readonly wall: number;
  /** Most that the largest and the smallest diameter may differ, mm. */
  readonly outOfRound: number;
};

/** One tube as it goes into the bender: a whole runner, or what is between two splits of it. */
export type BentTube = {
  /** `r1`; `r1a`, `r1b` where it is split. */
  readonly id: string;
  readonly runner: string;
  readonly tube: string;
  /** Along the runner's centerline; `from` is below 0 where the tube begins in a flange's step, above where a transition is before it. */
  readonly from: number;
  readonly to: number;
  readonly cutLength: number;
  readonly trimStart: number;
  readonly trimEnd: number;
  /** One row a bend, then the straight that remains; from the runner's start, and from its other end. */
  readonly fromStart: readonly MachineRow[];
  readonly fromEnd: readonly MachineRow[];
  /** From which end every bend can be clamped and the last has its tail. */
  readonly clampable: { readonly fromStart: boolean; readonly fromEnd: boolean };
  /** Bends before which a split would let all be clamped, counted from 1 along the runner; empty where none is needed. */
  readonly offered: readonly number[];
  /**
   * The first bend's plane from the runner's up, as in start-clocking. Behind a split: its line from that of the tube before, both
   * scribed along the outside of the bend next to the joint; right-handed about the gas's direction.
   */
  readonly clocking: number;
  readonly thinned: readonly Thinned[];
  /** Rounded: marks and trims to the tape, the cumulative dial and what bends are set to to the dial; bent from the end that can be clamped. */
  readonly rounded: Rounded;
  readonly remarks: readonly Remark[];
};

// Proving a made tube with a ruler

export type CheckHeights = {
  readonly runner: string;
  /** Between the middles of its two ends, in a straight line. */
  readonly chord: number;
  /**
   * The tube lying by itself on a flat plate, its centre of mass as low as it can be: how high its section's lowest point stands at
   * both ends and at the middle of each bend, in that order along the tube.
   */
  readonly heights: readonly { readonly at: 'start' | 'end' | number; readonly height: number }[];
  /** From end to end along the plate, seen from above. */
  readonly span: number;
  /** The tube in that pose, for a drawing: the plate is z = 0, its points lie above it. */
  readonly points: readonly Vec3[];
};

// What to buy and how it is cut

/** One length or bend of stock, and what is cut from it. */
export type UsedStock = {
  /** The workshop's id. */
  readonly stock: string;
  readonly kind: 'bar' | 'bend';
  /** The stock itself; an assumed one is in no workshop. */
  readonly of: StockBar | StockBend;
  /** Which of its kind, from 1: several of one id are used. */
  readonly number: number;
  readonly source: 'shelf' | 'bought';
  readonly cuts: readonly StockCut[];
  /** What is left in one piece: of a bar, mm; of a bend, degrees of arc. */
  readonly left: number;
};

/** Before it is looked up which stock that is. */
export type PlacedStock = Omit<UsedStock, 'of'>;

/** One piece in its stock. Bars: mm from the bar's first end; bends: degrees from where its first leg ends. */
export type StockCut = {
  readonly piece: string;
  readonly from: number;
  readonly to: number;
  /** Of a bend: which leg it keeps, and how much of either. */
  readonly legs?: readonly [first: number, second: number];
  /** It lies in its stock the other way round than in the tube. */
  readonly reversed?: true;
};

export type BuyLine = {
  readonly stock: string;
  readonly what: string;
  readonly count: number;
  /** Null where the workshop has no price. */
  readonly each: number | null;
  readonly cost: number | null;
  /** Not in the workshop: taken as on sale. */
  readonly assumed: boolean;
};

/** One search for the best way to cut: all bars of one tube, or all bends of one tube and radius. */
export type NestPart = {
  readonly what: string;
  readonly kind: 'bar' | 'bend';
  readonly used: readonly UsedStock[];
  /** What was made least, in words: `money`, `length bought`, `bends bought`. */
  readonly least: string;
  readonly value: number;
  /** No plan can have less than this. */
  readonly bound: number;
  readonly proved: boolean;
};

export type StockPlan = {
  readonly parts: readonly NestPart[];
  readonly buy: readonly BuyLine[];
  /** Of what is bought; null where a price is missing. */
  readonly cost: number | null;
  readonly remarks: readonly Remark[];
};

// Both ways side by side

export type WayTotals = {
  readonly way: Way;
  readonly possible: boolean;
  /** Of the made tubes, and of all stock they are cut from. */
  readonly mass: number | null;
  readonly stockMass: number | null;
  readonly pieces: number;
  readonly cuts: number;
  readonly welds: number;
  readonly bends: number;
  readonly minutes: number;
  /** Stock bought, welds, hours; null where a price is missing, with which. */
  readonly cost: { readonly stock: number | null; readonly welds: number | null; readonly work: number | null };
  readonly missing: readonly string[];
  readonly remarks: readonly Remark[];
};

export type TubeGroup = {
  /** Its name in `tubes`. */
  readonly tube: string;
  readonly runners: readonly string[];
  /** As the design has it. */
  readonly chosen: Way;
  readonly welded: WayTotals;
  readonly bent: WayTotals;
  /** What welding up takes with other longest legs, the longest first: shorter legs, more welds, perhaps less to buy. */
  readonly legs: readonly LegChoice[];
};

export type LegChoice = {
  /** As `workshop.longestLeg`; null: all that stock has. */
  readonly longestLeg: number | null;
  readonly isChosen: boolean;
  /** Bends and bars that are bought. */
  readonly bought: number;
  readonly totals: WayTotals;
};

export type MaterialLine = {
  /** Also what `workshop.prices` knows it by. */
  readonly name: string;
  readonly what: string;
  readonly quantity: number;
  /** Cut from stock that the buy list or the shelf has: it costs nothing more. */
  readonly ofStock: boolean;
  /** Of all of them. */
  readonly mass: number | null;
  readonly each: number | null;
  readonly cost: number | null;
};

export type Making = {
  readonly groups: readonly TubeGroup[];
  /** Of every runner, whichever way is chosen. */
  readonly welded: readonly WeldedTube[];
  readonly bent: readonly BentTube[];
  readonly heights: readonly CheckHeights[];
  /** Of the ways chosen. */
  readonly plan: StockPlan;
  readonly materials: readonly MaterialLine[];
  /** Of all whose mass is known, in the design's frame. */
  readonly mass: { readonly total: number; readonly centre: Vec3; readonly unknown: readonly string[] };
  /** All prices that are known together; null in all where one is missing, and which. */
  readonly cost: {
    readonly known: number;
    readonly total: number | null;
    readonly missing: readonly string[];
    readonly currency: string;
  };
  readonly remarks: readonly Remark[];
};
