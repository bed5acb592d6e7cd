/** One name over the picture, and the book that knows where in the page each is and how large it came out. */
import { memo, useCallback } from 'react';
import type { Label } from '../model/labels';
import { watchBoxes } from './boxes';

export type Tags = ReturnType<typeof createTags>;

/** @param onChange called when a text turns out to be larger or smaller than it was */
export function createTags(onChange: () => void) {
  const nodes = new Map<string, HTMLElement>();
  const boxes = watchBoxes(onChange);
  return {
    node: (key: string) => nodes.get(key),
    box: boxes.of,
    /** @returns what takes it out again */
    keep(key: string, node: HTMLElement): () => void {
      nodes.set(key, node);
      return () => {
        nodes.delete(key);
        boxes.forget(node);
      };
    },
  };
}

type Props = {
  readonly id: string;
  readonly tags: Tags;
  readonly kind: Label['kind'] | 'gap';
  readonly text: string;
  readonly lit?: boolean;
  readonly fails?: boolean;
  /** Colour of the runner it names. */
  readonly dot?: string | undefined;
};

export const Tag = memo(function Tag({ id, tags, kind, text, lit = false, fails = false, dot }: Props) {
  const ref = useCallback((node: HTMLElement) => tags.keep(id, node), [tags, id]);
  return (
    <span
      ref={ref}
      className="viewport-label"
      data-kind={kind}
      data-lit={lit || undefined}
      data-fails={fails || undefined}
    >
      {dot !== undefined && <i style={{ background: dot }} />}
      {text}
    </span>
  );
});
