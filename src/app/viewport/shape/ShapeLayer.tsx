/**
 * Handles of what is picked, guides while it is dragged, and what resists: drawn over the picture at constant size, placed
 * anew after every change of the view or the design. Reads the drawn design and tells the hand; it decides nothing.
 */
import { type RefObject, useEffect, useImperativeHandle, useMemo, useRef, useState } from 'react';
import { addScaled, type Header } from '../../../../geometry';
import type { Design } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import { documents } from '../../document';
import { useHand } from '../../hand/hand';
import { placeOf, refAtPath } from '../../refs';
import { type Ref, useSession } from '../../session';
import { handlesFor, mainHandle } from '../../shape/choose';
import { byOf, sketch } from '../../shape/grip';
import { type Handle, handleKey, handleName, sameHandle } from '../../shape/handle';
import { holds } from '../../shape/machine';
import { shaper, useShape } from '../../shape/shaper';
import type { Rig } from '../camera/rig';
import { project } from '../camera/view';
import type { Taken } from '../overlay/place';
import { putAttribute, putVisible } from '../overlay/write';
import { type Link, linkHand } from './link';
import { Mark } from './marks';
import { type Spot, spread } from './spread';
import './shape.css';

/** How far apart marks stand on screen, px: what a pointer or a finger can tell apart. */
const APART = { fine: 34, coarse: 46 };

/** Asked once which pointer it is: the browser may have to lay out the page to tell. */
function leastApart(): () => number {
  const coarse = matchMedia('(pointer: coarse)');
  return () => (coarse.matches ? APART.coarse : APART.fine);
}

/** Half of what a mark covers, px. */
const MARK = 14;

type Placed = {
  readonly handle: Handle;
  readonly at: Vec3;
  readonly way: Vec3 | null;
  readonly refusal: string | null;
};

export type Hold = { onPress(e: PointerEvent, part: Ref): boolean };

type Props = {
  readonly rig: Rig;
  readonly header: Header;
  readonly hold: RefObject<Hold | null>;
  /** Told where marks stand, for names to keep clear of them. */
  readonly marks: RefObject<readonly Taken[]>;
  /** A press on a part that was no drag, client coordinates. */
  readonly onClick: (at: readonly [number, number]) => void;
};

export function ShapeLayer({ rig, header, hold, marks, onClick }: Props) {
  const svg = useRef<SVGSVGElement>(null);
  const link = useRef<Link | null>(null);
  const picked = useSession((s) => s.selected);
  const hovered = useSession((s) => s.hovered);
  const state = useShape((s) => s);
  const resistance = useHand((s) => s.resistance);
  const held = holds(state) ? state : null;
  const busy = held?.grip.handle ?? (state.phase === 'pressed' ? state.grip.handle : null);
  const over = state.phase === 'hovering' ? state.handle : busy;

  const chosen = useRef(new Map<string, number>());
  const [apart] = useState(leastApart);
  const open = held !== null;

  const placed = useMemo((): Placed[] => {
    const list = busy ? [open ? drawnAs(busy, header) : busy] : handlesFor(header, picked, hovered);
    return list.flatMap((handle) => {
      const grip = sketch(header, handle);
      if (!grip) return [];
      return [
        {
          handle,
          at: grip.at,
          way: orientation(header, handle),
          refusal: grip.refusal,
        },
      ];
    });
  }, [header, picked, hovered, busy, open]);

  const lines = useMemo(() => {
    const out: { key: string; from: Vec3; to: Vec3; kind: string }[] = [];
    held?.snapped?.guides.forEach(([from, to], i) => {
      out.push({ key: `guide ${i}`, from, to, kind: 'guide' });
    });
    if (held && resistance && held.amount.kind === 'move') {
      const now = sketch(header, drawnAs(held.grip.handle, header));
      const asked = addScaled(held.grip.anchor ?? held.grip.at, byOf(held.amount), 1);
      if (now) out.push({ key: 'short', from: now.anchor ?? now.at, to: asked, kind: 'short' });
    }
    return out;
  }, [held, resistance, header]);
  const stops = useMemo(
    () =>
      (resistance?.where ?? []).slice(0, 1).flatMap((path) => {
        const ref = refAtPath(path, header);
        const at = ref && placeOnTube(ref, header);
        return at ? [at] : [];
      }),
    [resistance, header],
  );

  useEffect(() => {
    const made = linkHand(svg.current!, rig, onClick);
    link.current = made;
    return () => made.stop();
  }, [rig, onClick]);
  useImperativeHandle(hold, () => ({
    onPress(e, part) {
      const { selected } = useSession.getState();
      if (!selected || selected.kind !== part.kind || selected.id !== part.id || part.kind === 'surrounding')
        return false;
      const isPart =
        part.kind !== 'runner' ||
        (part.bend === (selected as typeof part).bend && part.straight === (selected as typeof part).straight);
      const handle = isPart ? mainHandle(part) : null;
      return handle !== null && (link.current?.start(e, handle, true) ?? false);
    },
  }));
  useEffect(() => {
    const layer = svg.current!;
    const press = (e: PointerEvent) => {
      const found = placed.find(
        (p) => handleKey(p.handle) === (e.target as Element).closest('[data-handle]')?.getAttribute('data-handle'),
      );
      if (!found || e.button !== 0) return;
      if (link.current?.start(e, found.handle)) e.stopPropagation();
    };
    layer.addEventListener('pointerdown', press);
    return () => layer.removeEventListener('pointerdown', press);
  }, [placed]);

  useEffect(() => {
    const show = () => {
      const [view, size] = [rig.drawn(), rig.size()];
      const see = (p: Vec3) => project(view, size, p);
      const nodes = svg.current?.querySelectorAll<SVGGElement>('[data-handle]') ?? [];
      const spots = placed.map(({ handle, at, way }): Spot | null => {
        const seen = see(at);
        const ahead = seen && way && see(addScaled(at, way, 20));
        const [dx, dy] = ahead ? [ahead[0] - seen[0], ahead[1] - seen[1]] : [1, 0];
        const long = Math.hypot(dx, dy);
        const back = handle.kind === 'slide' && handle.along === 'in';
        return (
          seen && {
            key: handleKey(handle),
            kind: handle.kind,
            at: [seen[0], seen[1]],
            way: long > 0.5 ? [dx / long, dy / long] : [1, 0],
            back,
          }
        );
      });
      const stands = spread(
        spots.filter((s) => s !== null),
        apart(),
        chosen.current,
      );
      marks.current = stands.map(([x, y]) => ({ l: x - MARK, r: x + MARK, t: y - MARK, b: y + MARK }));
      let next = 0;
      placed.forEach(({ way }, i) => {
        const node = nodes[i];
        const spot = spots[i];
        const stand = spot && stands[next++];
        if (!node) return;
        putVisible(node, stand != null);
        if (!stand) return;
        const turn = way ? (Math.atan2(spot.way[1], spot.way[0]) * 180) / Math.PI : 0;
        putAttribute(
          node,
          'transform',
          `translate(${stand[0].toFixed(1)} ${stand[1].toFixed(1)}) rotate(${turn.toFixed(1)})`,
        );
      });
      svg.current?.querySelectorAll<SVGLineElement>('line[data-line]').forEach((node, i) => {
        const line = lines[i];
        const [a, b] = line ? [see(line.from), see(line.to)] : [null, null];
        putVisible(node, a !== null && b !== null);
        if (!a || !b) return;
        for (const [name, value] of [
          ['x1', a[0]],
          ['y1', a[1]],
          ['x2', b[0]],
          ['y2', b[1]],
        ] as const)
          putAttribute(node, name, value.toFixed(1));
      });
      svg.current?.querySelectorAll<SVGCircleElement>('circle[data-stop]').forEach((node, i) => {
        const seen = stops[i] && see(stops[i]);
        putVisible(node, seen != null);
        if (seen) putAttribute(node, 'transform', `translate(${seen[0].toFixed(1)} ${seen[1].toFixed(1)})`);
      });
    };
    show();
    return rig.listen(show);
  }, [rig, apart, placed, lines, stops, marks]);

  return (
    <svg ref={svg} className="shape-layer" aria-hidden="true">
      {lines.map((l) => (
        <line key={l.key} data-line={l.kind} />
      ))}
      {stops.map((at) => (
        <circle key={at.join()} data-stop="" r="15" />
      ))}
      {placed.map(({ handle, refusal }) => (
        <g
          key={handleKey(handle)}
          data-handle={handleKey(handle)}
          data-name={handleName(handle)}
          data-over={sameHandle(handle, over) || undefined}
          onPointerEnter={() => shaper.dispatch({ kind: 'over', handle })}
          onPointerLeave={() => shaper.dispatch({ kind: 'over', handle: null })}
        >
          <circle className="reach" />
          <Mark
            handle={handle}
            locked={refusal?.includes('locked') ?? false}
            picked={sameHandle(handle, mainHandle(picked)) || busy !== null}
          />
        </g>
      ))}
    </svg>
  );
}

/** On the tube where the rule is about one bend or straight of it. */
function placeOnTube(ref: Ref, header: Header): Vec3 | null {
  if (ref.kind === 'runner' && ref.straight !== undefined)
    return sketch(header, { kind: 'run', runner: ref.id, straight: ref.straight })?.at ?? null;
  if (ref.kind === 'runner' && ref.bend !== undefined)
    return sketch(header, { kind: 'bend', runner: ref.id, bend: ref.bend })?.at ?? null;
  return placeOf(ref, header);
}

/** While a new bend is pulled out and drawn, the mark is on that bend: it ends the straight that it came out of. */
function drawnAs(handle: Handle, header: Header): Handle {
  if (handle.kind !== 'add') return handle;
  const { runner, straight } = handle;
  const points = (design: Design | null) => design?.runners.find((r) => r.id === runner)?.points?.length ?? 0;
  const isOut = points(header.design) > points(documents.store.getState().settled);
  return isOut ? { kind: 'bend', runner, bend: straight } : handle;
}

/** The direction a mark lies along on screen; null: upright. */
function orientation(header: Header, handle: Handle): Vec3 | null {
  if (handle.kind === 'tilt') {
    const { axis, up } = header.merges.get(handle.id)!.merge;
    const side: Vec3 = [
      axis[1] * up[2] - axis[2] * up[1],
      axis[2] * up[0] - axis[0] * up[2],
      axis[0] * up[1] - axis[1] * up[0],
    ];
    // A tilt stands on the side of the outlet that it swings toward.
    return handle.about === 'up' ? side : up;
  }
  if (handle.kind === 'slide') return sketch(header, handle)?.along ?? null;
  if (handle.kind !== 'run' && handle.kind !== 'turn' && handle.kind !== 'add') return null;
  // The turning grip carries the straight's own direction.
  const turn = sketch(header, { kind: 'turn', runner: handle.runner, straight: handle.straight });
  return turn?.along ?? null;
}
