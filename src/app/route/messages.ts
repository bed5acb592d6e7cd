/** What the page and the workers that lay a header say to each other. Plain data only: it is copied between threads. */
import type { Layout, Meshes, Round, RouterOptions } from '../../../geometry';
import type { Design } from '../../../shared/design/types';

/** `lay` comes first and once, with the meshes; it is not answered. */
export type RouteRequest =
  | { readonly do: 'lay'; readonly design: Design; readonly meshes: Meshes; readonly options: RouterOptions }
  /** After `ms` the round ends with what it has. */
  | { readonly do: 'round'; readonly n: number; readonly ms: number };

export type RouteReply =
  | { readonly n: number; readonly seen: Layout }
  /** `cut`: it ended before its time, so the same round may come to more elsewhere. */
  | { readonly n: number; readonly round: Round; readonly cut: boolean }
  | { readonly failed: string };
