/**
 * A step at the workbench, as data: what is to be done, the numbers that it is done by, what is drawn beside it. Lengths mm and
 * angles degrees, as tape and dial read them: rounded already. Ids stay the same while the same thing is done, so that ticks stay.
 */
import type { Vec3 } from '../../../shared/vec3';

export type Figure = {
  /** A word or two: `Arc`. Unique in its step. */
  readonly name: string;
} & (
  | {
      readonly kind: 'length' | 'angle' | 'count';
      readonly value: number;
      /** Which way round, where it is a turn; in words. */
      readonly way?: string;
    }
  /** Of what is bought or set up, mm: not measured off, and so not rounded. */
  | { readonly kind: 'size'; readonly value: number }
  | { readonly kind: 'words'; readonly value: string }
);

export type Drawing =
  /** A piece seen from the side, its arc in the plane of the paper. */
  | {
      readonly kind: 'piece';
      readonly in: number;
      readonly angle: number;
      readonly radius: number;
      readonly out: number;
      readonly diameter: number;
    }
  /** The tube's end, looking along it away from its start: the line before at the top, the next one turned, clockwise positive. */
  | { readonly kind: 'turn'; readonly degrees: number; readonly from: string; readonly to: string }
  /** A straight tube with the bends' marks, from its sawn end; `now` is the one meant. */
  | {
      readonly kind: 'marks';
      readonly length: number;
      readonly marks: readonly { readonly from: number; readonly to: number }[];
      readonly now: number | null;
      /** Where the bender's dial stands for it, degrees, with the way that it counts. */
      readonly dial?: { readonly at: number; readonly clockwise: boolean };
    }
  /** The tube lying on a flat plate. */
  | {
      readonly kind: 'plate';
      readonly points: readonly Vec3[];
      readonly diameter: number;
      readonly heights: readonly { readonly name: string; readonly height: number }[];
    };

export const TASKS = ['cut', 'dress', 'mark', 'bend', 'fit', 'check', 'weld', 'prove'] as const;
/** What kind of work it is, for the list's headings. */
export type Task = (typeof TASKS)[number];

export type Step = {
  /** Unique in the header. */
  readonly id: string;
  /** Null: of the whole header. */
  readonly runner: string | null;
  readonly task: Task;
  /** `Saw piece r1-1` */
  readonly title: string;
  /** What a change of is a change of the step. */
  readonly figures: readonly Figure[];
  /** To be known beside it, such as the stock it comes from: sawn is sawn, whatever a later plan says. */
  readonly beside: readonly Figure[];
  /** Sentences: how it is done. */
  readonly says: readonly string[];
  /** Sentences: what stands in the way, what cannot be as it is. */
  readonly care: readonly string[];
  readonly drawing: Drawing | null;
};
