/** Names over the picture, as text and not as pixels: they stay sharp, readable and out of each other's way. */
import { useEffect, useMemo, useRef } from 'react';
import type { Header } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Paint } from '../../colours';
import { useSession } from '../../session';
import type { Rig } from '../camera/rig';
import { project } from '../camera/view';
import { isPicked, sameElement } from '../emphasis';
import { isHidden, type Label, nameLabel, occluders, standingLabels } from '../model/labels';
import { placeLabels } from './place';

type Props = {
  readonly rig: Rig;
  readonly header: Header;
  readonly paints: ReadonlyMap<string, Paint>;
  /** Places with a text that must be read: a gap that is being looked at. */
  readonly notes: readonly {
    readonly key: string;
    readonly text: string;
    readonly at: Vec3;
    readonly fails: boolean;
  }[];
  /** Whether a place is cut away now: another cut is another frame, on which this is asked again. */
  readonly isGone: (at: Vec3) => boolean;
};

type Entry = Pick<Label, 'key' | 'at'> & {
  readonly must: boolean;
  readonly rank: number;
  /** The runner on whose tube it hangs: not where another's covers it. */
  readonly on: string | null;
};

/** A pin stands on the place of a problem, and its head on what a note there would say: the note moves under it, px. */
const BELOW_PIN = 42;

/** Where the triad and the strip of views lie, px. */
const controls = ({ width, height }: { width: number; height: number }) => [
  { l: 0, r: 190, t: height - 140, b: height },
  { l: width / 2 - 225, r: width / 2 + 225, t: height - 44, b: height },
];

export function Labels({ rig, header, paints, notes, isGone }: Props) {
  const selection = useSession((s) => s.selection);
  const hovered = useSession((s) => s.hovered);
  const isPinned = useSession((s) => s.mark !== null);
  const balls = useMemo(() => occluders(header), [header]);
  const standing = useMemo(() => standingLabels(header), [header]);
  const names = useMemo(() => {
    const list = [hovered, ...selection].map((ref) => nameLabel(header, ref)).filter((l) => l !== null);
    return list.filter((l, i) => list.findIndex((o) => o.key === l.key) === i);
  }, [header, hovered, selection]);
  const nodes = useRef(new Map<string, HTMLElement>());
  const labels = [...standing, ...names];

  const entries = useMemo((): Entry[] => {
    const rankOf = (l: Label) => {
      if (sameElement(l.ref, hovered) || isPicked(l.ref, selection)) return 1;
      return l.kind === 'cylinder' ? 3 : 2;
    };
    const list = [...standing, ...names].map((l) => ({
      key: l.key,
      at: l.at,
      rank: rankOf(l),
      must: l.kind === 'name',
      on: l.kind === 'runner' ? l.ref.id : null,
    }));
    const noted = notes.map((n) => ({ key: n.key, at: [n.at], rank: 0, must: true, on: null }));
    return [...noted, ...list].sort((a, b) => a.rank - b.rank);
  }, [standing, names, notes, hovered, selection]);

  useEffect(() => {
    const show = () => {
      const size = rig.size();
      const view = rig.drawn();
      const shown = entries.filter((e) => nodes.current.has(e.key));
      const boxes = shown.map((e) => {
        const node = nodes.current.get(e.key)!;
        return {
          width: node.offsetWidth,
          height: node.offsetHeight,
          candidates: e.at.map((p) => {
            const covered = !e.must && (isGone(p) || (e.on !== null && isHidden(p, e.on, balls, view)));
            const seen = covered ? null : project(view, size, p);
            return seen && e.rank === 0 && isPinned ? ([seen[0], seen[1] + BELOW_PIN] as const) : seen;
          }),
          must: e.must,
        };
      });
      placeLabels(boxes, size, controls(size)).forEach((place, i) => {
        const { style } = nodes.current.get(shown[i]!.key)!;
        style.visibility = place ? 'visible' : 'hidden';
        if (place)
          style.transform = `translate(-50%, -50%) translate(${place[0].toFixed(1)}px, ${place[1].toFixed(1)}px)`;
      });
    };
    show();
    return rig.listen(show);
  }, [rig, entries, balls, isPinned, isGone]);

  const keep = (key: string) => (node: HTMLElement | null) => {
    if (node) nodes.current.set(key, node);
    else nodes.current.delete(key);
  };
  return (
    <div className="viewport-labels" aria-hidden="true">
      {labels.map((l) => (
        <span
          key={l.key}
          ref={keep(l.key)}
          className="viewport-label"
          data-kind={l.kind}
          data-lit={sameElement(l.ref, hovered) || isPicked(l.ref, selection) || undefined}
        >
          {l.kind === 'runner' && <i style={{ background: paints.get(l.ref.id)?.colour }} />}
          {l.text}
        </span>
      ))}
      {notes.map((n) => (
        <span
          key={n.key}
          ref={keep(n.key)}
          className="viewport-label"
          data-kind="gap"
          data-fails={n.fails || undefined}
        >
          {n.text}
        </span>
      ))}
    </div>
  );
}
