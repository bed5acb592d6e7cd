/** Findings that say one thing of many places become one that names them all: a dozen lines alike hide the thirteenth. */
import type { Finding } from './plan';

/** What a finding shares with others. */
export type Like = {
  /** The same for all that can be said in one. */
  readonly kind: string;
  /** How it is called among them: `1`, `port p1 and fastener 2`. */
  readonly place: string;
  readonly together: (places: string) => string;
  /** The one thing in the design that all of them come of. Default: where the first is. */
  readonly where?: string;
};

/** So many are still read one by one. */
const FEW = 2;

export function gather(found: readonly Finding[]): Finding[] {
  return found.flatMap((finding): Finding[] => {
    const { like, refuses } = finding;
    if (!like) return [finding];
    const same = found.filter((f) => f.like?.kind === like.kind && f.refuses === refuses);
    if (same.length <= FEW) return [finding];
    if (same[0] !== finding) return [];
    const places = [...new Set(same.map((f) => f.like!.place))];
    return [{ where: like.where ?? finding.where, message: like.together(places.join(', ')), refuses }];
  });
}
