/** What the page and the worker behind a hand say to each other. Plain data only: it is copied between threads. */
import type { Answer, Held, Meshes } from '../../../geometry';
import type { Design } from '../../../shared/design/types';

/**
 * `hold` begins a gesture and ends any before it; meshes are sent once and kept, `null` meaning those sent last. `further`
 * asks for the last ask again. `practise` is not answered.
 */
export type HandRequest =
  | {
      readonly do: 'hold';
      readonly hand: number;
      readonly from: Design;
      readonly held: Held;
      readonly meshes: Meshes | null;
    }
  | { readonly do: 'ask'; readonly hand: number; readonly asked: Design }
  | { readonly do: 'further'; readonly hand: number }
  | { readonly do: 'practise'; readonly design: Design; readonly meshes: Meshes };

export type HandReply =
  | { readonly hand: number; readonly answer: Answer /** Script spent on it, ms. */; readonly spent: number }
  | { readonly hand: number; readonly failed: string };
