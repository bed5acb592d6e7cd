/**
 * What is being drawn, over the picture: the mark where it would begin, its base, its outline, and its sizes beside the pointer.
 * Placed anew after every change of the view. Tells the tool; decides nothing.
 */
import './draw.css';
import { type RefObject, useEffect, useImperativeHandle, useRef, useState } from 'react';
import { sub, unit } from '../../../geometry';
import type { NewShape } from '../../../shared/design/edit';
import type { Vec3 } from '../../../shared/vec3';
import { useDisplay } from '../actions/display';
import { nameOf, thingOf } from '../inspect/picked';
import type { Rig } from '../viewport/camera/rig';
import { sightThrough } from '../viewport/camera/sight';
import { eyePosition, project } from '../viewport/camera/view';
import type { PickedSurface } from '../viewport/gl/pick';
import { watchBoxes } from '../viewport/overlay/boxes';
import { putAttribute, putStyle, putVisible } from '../viewport/overlay/write';
import { outlineOf } from './outline';
import type { DrawState } from './stroke';
import { type DrawTool, drawTool, useDraft } from './tool';
import { baseWords, sizeWords } from './words';

/** How far from the pointer its words stand, px. */
const OFF = 18;
const KINDS = ['mark', 'base', 'body'] as const;

export type DrawLayerProps = {
  readonly shape: NewShape;
  readonly rig: Rig;
  readonly tool: RefObject<DrawTool | null>;
  readonly under: (at: readonly [number, number]) => PickedSurface | null;
};

export function DrawLayer({ shape, rig, tool, under }: DrawLayerProps) {
  const svg = useRef<SVGSVGElement>(null);
  const own = useRef<DrawTool | null>(null);
  const state = useDraft((s) => s.state);
  useEffect(() => {
    const made = drawTool({ shape, rig, layer: svg.current!, under });
    own.current = made;
    return () => made.stop();
  }, [shape, rig, under]);
  useImperativeHandle(tool, () => ({
    hold: (e) => own.current?.hold(e) ?? true,
    hover: (at) => own.current?.hover(at),
  }));
  useEffect(() => {
    const show = () => {
      const found = drawnLines(state, rig);
      for (const kind of KINDS)
        for (const path of svg.current?.querySelectorAll(`[data-kind="${kind}"] path`) ?? [])
          putAttribute(path, 'd', found.get(kind) ?? '');
    };
    show();
    return rig.listen(show);
  }, [rig, state]);
  return (
    <>
      <svg ref={svg} className="draw-layer" aria-hidden="true">
        {KINDS.map((kind) => (
          <g key={kind} data-kind={kind}>
            <path className="paper" />
            <path className="pen" />
          </g>
        ))}
      </svg>
      <DrawTag rig={rig} />
    </>
  );
}

/** Each kind of lines as the data of one path. */
function drawnLines(state: DrawState, rig: Rig): ReadonlyMap<string, string> {
  const [view, size] = [rig.drawn(), rig.size()];
  const at = state.phase === 'ready' ? state.at : state.a;
  if (!at) return new Map();
  const { mmPerPx, back } = sightThrough(view, size, 0, 0, at);
  const toEye = view.parallel ? () => back : (p: Vec3) => unit(sub(eyePosition(view), p));
  return new Map(
    outlineOf(state, toEye, mmPerPx).map(({ kind, lines }) => [
      kind,
      lines
        .map((line) => {
          const seen = line.map((p) => project(view, size, p));
          // A line that runs behind the eye is left out.
          if (seen.some((p) => p === null)) return '';
          return seen.map((p, i) => `${i === 0 ? 'M' : 'L'}${p![0].toFixed(1)} ${p![1].toFixed(1)}`).join('');
        })
        .join(''),
    ]),
  );
}

function DrawTag({ rig }: { readonly rig: Rig }) {
  const { state, px, on } = useDraft();
  const display = useDisplay();
  const box = useRef<HTMLDivElement>(null);
  const place = useRef(() => {});
  const [boxes] = useState(() => watchBoxes(() => place.current()));
  const [coarse] = useState(() => matchMedia('(pointer: coarse)').matches);
  useEffect(() => {
    const node = box.current;
    return () => {
      if (node) boxes.forget(node);
    };
  }, [boxes]);
  const words = sizeWords(state, display);
  useEffect(() => {
    place.current = () => {
      const node = box.current;
      if (!node) return;
      putVisible(node, px !== null && words !== null);
      if (!px) return;
      const size = rig.size();
      const { width: w, height: h } = boxes.of(node);
      const x = px[0] + OFF + w > size.width - 4 ? px[0] - OFF - w : px[0] + OFF;
      // Below a finger it would be under the hand.
      const above = coarse || px[1] + OFF + h > size.height - 8;
      const y = above ? px[1] - (coarse ? 2 : 1) * OFF - h : px[1] + OFF;
      putStyle(node, '--x', `${Math.max(4, x).toFixed(0)}px`);
      putStyle(node, '--y', `${Math.max(4, y).toFixed(0)}px`);
    };
    place.current();
  });
  return (
    <div ref={box} className="hand-tag draw-tag">
      <b className={state.phase === 'ready' ? undefined : 'size'}>{words}</b>
      {state.phase !== 'second' && state.base && (
        <span className="quiet">{baseWords(state.base, on && nameOf([thingOf(on)]))}</span>
      )}
    </div>
  );
}
