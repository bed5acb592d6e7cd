/** Names over the picture, as text and not as pixels: they stay sharp, readable and out of each other's way. */
import { type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import type { Header } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Paint } from '../../colours';
import type { ShownPart } from '../../made/shape';
import { useSession } from '../../session';
import type { Rig } from '../camera/rig';
import { project } from '../camera/view';
import { type CutPlane, isCutAway } from '../cuts/planes';
import { isPicked, sameElement } from '../emphasis';
import { coversOf, isCovered } from '../model/cover';
import type { Exploded } from '../model/explode';
import { type Label, labelsApart, nameLabel } from '../model/labels';
import { placeLabels, type Taken } from './place';
import { createTags, Tag } from './Tag';
import { putStyle, putVisible } from './write';

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
  /** What is cut away has no name. */
  readonly cuts: readonly CutPlane[];
  /** Parts that are seen, and where they stand while they are apart. */
  readonly parts: readonly ShownPart[];
  readonly exploded: Exploded;
  /** Where marks to drag stand. */
  readonly marks: RefObject<readonly Taken[]>;
};

type Entry = Pick<Label, 'key' | 'at'> & {
  readonly must: boolean;
  readonly rank: number;
  /** The runner on whose tube it hangs: not where another's covers it. */
  readonly on: string | null;
};

/** A pin stands on the place of a problem, and its head on what a note there would say: the note moves under it, px. */
const BELOW_PIN = 42;

type Shift = readonly [x: number, y: number];
/** Where a text that must be read may stand from its place, best first, px: near enough to tell what it belongs to. */
const BESIDE: readonly Shift[] = [
  [0, -20],
  [0, 20],
  [0, -44],
  [0, 44],
  [-80, 0],
  [80, 0],
];
/** A name covers its place; a note about a gap leaves the gap to be seen. */
const ON_OR_BESIDE: readonly Shift[] = [[0, 0], ...BESIDE];

/** Where the triad and the strip of views lie, px. */
const controls = ({ width, height }: { width: number; height: number }) => [
  { l: 0, r: 190, t: height - 140, b: height },
  { l: width / 2 - 225, r: width / 2 + 225, t: height - 44, b: height },
];

export function Labels({ rig, header, paints, notes, cuts, parts, exploded, marks }: Props) {
  const selection = useSession((s) => s.selection);
  const hovered = useSession((s) => s.hovered);
  const isPinned = useSession((s) => s.mark !== null);
  const covers = useMemo(() => coversOf(header), [header]);
  const standing = useMemo(() => labelsApart(header, parts, exploded), [header, parts, exploded]);
  const names = useMemo(() => {
    const list = [hovered, ...selection].map((ref) => nameLabel(header, ref)).filter((l) => l !== null);
    return list.filter((l, i) => list.findIndex((o) => o.key === l.key) === i);
  }, [header, hovered, selection]);
  const place = useRef(() => {});
  const [tags] = useState(() => createTags(() => place.current()));

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
      const shown = entries.flatMap((entry) => {
        const node = tags.node(entry.key);
        return node ? [{ entry, node }] : [];
      });
      const boxes = shown.map(({ entry: e, node }) => {
        const places = e.at.map((p) => {
          const gone = !e.must && (isCutAway(cuts, p) || (e.on !== null && isCovered(p, e.on, covers, view)));
          const seen = gone ? null : project(view, size, p);
          return seen && ([seen[0], seen[1] + (e.rank === 0 && isPinned ? BELOW_PIN : 0)] as const);
        });
        const shifts = e.rank === 0 ? BESIDE : ON_OR_BESIDE;
        const [on] = places;
        const candidates = e.must && on ? shifts.map(([x, y]) => [on[0] + x, on[1] + y] as const) : places;
        return { ...tags.box(node), candidates, must: e.must };
      });
      placeLabels(boxes, size, [...controls(size), ...marks.current]).forEach((at, i) => {
        const { node } = shown[i]!;
        putVisible(node, at !== null);
        if (at)
          putStyle(node, 'transform', `translate(-50%, -50%) translate(${at[0].toFixed(1)}px, ${at[1].toFixed(1)}px)`);
      });
    };
    place.current = show;
    show();
    return rig.listen(show);
  }, [rig, tags, entries, covers, cuts, marks, isPinned]);

  return (
    <div className="viewport-labels" aria-hidden="true">
      {[...standing, ...names].map((l) => (
        <Tag
          key={l.key}
          id={l.key}
          tags={tags}
          kind={l.kind}
          text={l.text}
          lit={sameElement(l.ref, hovered) || isPicked(l.ref, selection)}
          dot={l.kind === 'runner' ? paints.get(l.ref.id)?.colour : undefined}
        />
      ))}
      {notes.map((n) => (
        <Tag key={n.key} id={n.key} tags={tags} kind="gap" text={n.text} fails={n.fails} />
      ))}
    </div>
  );
}
