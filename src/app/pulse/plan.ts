/** Where each pipe's panel lies: side by side in the rig's order, one scale for all, px. Wider than there is room where they could not be read. */

export type Panel = { readonly left: number; readonly width: number };
export type Plan = { readonly perMetre: number; readonly panels: readonly Panel[]; readonly width: number };

/** Between panels, so that the numbers and words of neighbours stay apart. */
export const GAP = 14;
/** How wide half of the panels must be to be read, and all of them to be seen; as long as the whole stays within so many times the room. */
const READ = 60;
const SEEN = 14;
const MOST_WIDER = 2.5;

/** @param lengths m @param room px from the first panel's left to the last one's right */
export function planPanels(lengths: readonly number[], room: number): Plan {
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const gaps = GAP * (lengths.length - 1);
  const fitting = Math.max(40, room - gaps) / total;
  const sorted = [...lengths].sort((a, b) => a - b);
  const wished = Math.max(READ / sorted[sorted.length >> 1]!, SEEN / sorted[0]!);
  const perMetre = Math.max(fitting, Math.min(wished, (MOST_WIDER * room - gaps) / total));
  let left = 0;
  const panels = lengths.map((length) => {
    const panel = { left, width: length * perMetre };
    left += panel.width + GAP;
    return panel;
  });
  return { perMetre, panels, width: left - GAP };
}

/** The panel under or nearest to a place, and how far along it, 0 to 1. */
export function panelAt({ panels }: Plan, x: number): { readonly pipe: number; readonly share: number } {
  let [pipe, best] = [0, Infinity];
  panels.forEach(({ left, width }, i) => {
    const off = Math.max(left - x, x - left - width, 0);
    if (off < best) [pipe, best] = [i, off];
  });
  const { left, width } = panels[pipe]!;
  return { pipe, share: Math.min(1, Math.max(0, (x - left) / width)) };
}
