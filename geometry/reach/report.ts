/** Whether tools reach what must be reached, bare and wrapped, and where the wrap must end for it. mm, degrees. */
import type { Vec3 } from '../../shared/vec3';

export type Reach = 'reachable' | 'before-wrapping' | 'one-tool' | 'blocked';

/** A piece of a tool or of what is drawn out: a round bar with flat or round ends. */
export type ToolSolid = {
  readonly shape: 'cylinder' | 'capsule';
  readonly a: Vec3;
  readonly b: Vec3;
  readonly radius: number;
};

/** One tool tried at one place. */
export type ToolTry = {
  /** Of the tool, as people read it: `13 mm socket, 75 mm extension`. */
  readonly name: string;
  /** Kind in shared/stock/tools.ts. */
  readonly kind: string;
  readonly bare: boolean;
  readonly wrapped: boolean;
  /** What stops it, ids as in `between` of a margin; empty where nothing does. */
  readonly by: readonly string[];
  /** As it stands at rest where it works, or came nearest to: for drawing. */
  readonly solids: readonly ToolSolid[];
};

export type AccessEntry = {
  /** `f1 stud 3`, or the service point's id. */
  readonly id: string;
  readonly kind: 'fastener' | 'service';
  /** `flanges/f1/fasteners/2` or `service/plug 1`. */
  readonly where: string;
  readonly at: Vec3;
  readonly reach: Reach;
  /** The tool that does it, else the one that comes nearest; null for what needs none. */
  readonly best: ToolTry | null;
  readonly tries: readonly ToolTry[];
  /** Who is in the way where it is not reachable, most telling first. */
  readonly by: readonly string[];
  /** One sentence: what, and what would mend it. */
  readonly message: string;
};

export type BareReason = 'fastener' | 'service' | 'bundle' | 'sensor' | 'narrow' | 'as-drawn';

/** How one runner is wrapped. Stations along its centerline, mm. */
export type WrapPlan = {
  readonly runner: string;
  /** What the design says is wrapped. */
  readonly wrapped: readonly (readonly [number, number])[];
  /** What may be, so that everything stays reachable and the roll passes everywhere. */
  readonly possible: readonly (readonly [number, number])[];
  /** What is left bare by that, and why. */
  readonly bare: readonly {
    readonly from: number;
    readonly to: number;
    readonly why: BareReason;
    readonly of: string;
  }[];
};

export type AccessReport = {
  readonly entries: readonly AccessEntry[];
  /** Mesh files that were not read, so that nothing was measured against them; left out where all were. */
  readonly unread?: readonly string[];
  /** Empty where the design has no wrap. */
  readonly wrap: readonly WrapPlan[];
};
