/** Labels along a line, each as near its place as it can be with none over another. mm */
export type Spread = { readonly at: number; readonly width: number };

/** @returns where each middle comes to stand, in the order given */
export function spread(labels: readonly Spread[], from: number, to: number, gap = 1.5): number[] {
  const order = labels.map((_, i) => i).sort((a, b) => labels[a]!.at - labels[b]!.at);
  const total = labels.reduce((sum, l) => sum + l.width + gap, 0);
  // More than there is room for: closer together, all alike.
  const share = Math.min(1, (to - from + gap) / Math.max(total, 1e-9));
  const half = (i: number): number => (share * (labels[i]!.width + gap)) / 2;
  // Clusters that touch are moved as one, to where their members are on the whole nearest to their places.
  type Cluster = { members: number[]; size: number; start: number };
  const clusters: Cluster[] = [];
  const settle = (members: number[]): Cluster => {
    const size = members.reduce((sum, i) => sum + 2 * half(i), 0);
    let offset = 0;
    const starts = members.map((i) => {
      const start = labels[i]!.at - offset - half(i);
      offset += 2 * half(i);
      return start;
    });
    const mean = starts.reduce((a, b) => a + b, 0) / starts.length;
    return { members, size, start: Math.max(from - gap / 2, Math.min(mean, to + gap / 2 - size)) };
  };
  for (const i of order) {
    let cluster = settle([i]);
    while (clusters.length > 0 && clusters.at(-1)!.start + clusters.at(-1)!.size > cluster.start)
      cluster = settle([...clusters.pop()!.members, ...cluster.members]);
    clusters.push(cluster);
  }
  const middles: number[] = labels.map(() => 0);
  for (const { members, start } of clusters) {
    let at = start;
    for (const i of members) {
      middles[i] = at + half(i);
      at += 2 * half(i);
    }
  }
  return middles;
}
