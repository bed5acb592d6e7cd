/**
 * How large the page makes small pieces of text, px, without asking it in the middle of a change: asking then lays the
 * whole page out at once. A size is read once, and from then on the browser tells when it is another.
 */
export type Boxes = ReturnType<typeof watchBoxes>;

/** @param onChange called when a size turns out to be another, before the picture is shown */
export function watchBoxes(onChange: () => void) {
  const known = new Map<Element, { readonly width: number; readonly height: number }>();
  const observer = new ResizeObserver((entries) => {
    let changed = false;
    for (const { target } of entries) {
      const before = known.get(target);
      if (!before) continue;
      const now = read(target as HTMLElement);
      if (now.width === before.width && now.height === before.height) continue;
      known.set(target, now);
      changed = true;
    }
    if (changed) onChange();
  });
  return {
    of(node: HTMLElement) {
      let box = known.get(node);
      if (!box) {
        box = read(node);
        known.set(node, box);
        observer.observe(node);
      }
      return box;
    },
    forget(node: Element): void {
      known.delete(node);
      observer.unobserve(node);
    },
  };
}

const read = (node: HTMLElement) => ({ width: node.offsetWidth, height: node.offsetHeight });
