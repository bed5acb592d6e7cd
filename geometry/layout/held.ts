/** What a hand holds while it shapes the header; everything else follows. Points are counted as in the document. */
export type Held =
  | { readonly kind: 'points'; readonly runner: string; readonly points: readonly number[] }
  | { readonly kind: 'merge' | 'port' | 'surrounding'; readonly id: string };
