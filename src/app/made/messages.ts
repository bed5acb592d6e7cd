/** What the app and the worker that makes parts say to each other. Shapes change hands, all else is copied. */
import type { PartRemark } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import type { ShownPart } from './shape';

/** `number` tells the answers to one request from those to another; a newer request ends an older one. */
export type MakeRequest = { readonly number: number; readonly design: Design };

/** What of a header was made, and what is to be said about the rest. */
export type ShownMade = {
  readonly parts: readonly ShownPart[];
  readonly notMade: readonly PartRemark[];
  readonly warnings: readonly PartRemark[];
};

export type MakeReply = { readonly number: number } & (
  | { readonly doing: string }
  | { readonly done: ShownMade }
  | { readonly failed: string }
);
