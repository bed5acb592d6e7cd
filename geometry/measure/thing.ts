/** What can be measured from and to. Plain names and numbers, so that a measurement outlives an edit of the design. mm. */
import type { Vec3 } from '../../shared/vec3';

export type Thing =
  /** A runner's tube or one bend or straight of it, counted as the bend table does; `line`: its centerline instead. */
  | {
      readonly kind: 'runner';
      readonly id: string;
      readonly bend?: number;
      readonly straight?: number;
      readonly line?: boolean;
    }
  /** A place on a runner's centerline, `station` mm from its start. */
  | { readonly kind: 'station'; readonly id: string; readonly station: number }
  | { readonly kind: 'port'; readonly id: string }
  /** A bolt or stud of the flange `id`, counted from 0. */
  | { readonly kind: 'fastener'; readonly id: string; readonly index: number }
  /** A collector: its body, or the mouth of one inlet (counted from 1, as in the document), or of its outlet. */
  | { readonly kind: 'merge'; readonly id: string; readonly mouth?: number | 'outlet' }
  | { readonly kind: 'surrounding'; readonly id: string }
  /** Any place, such as one picked on a surface; `on` says what it lies on. */
  | { readonly kind: 'point'; readonly at: Vec3; readonly on?: string };
