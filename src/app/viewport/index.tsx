/**
 * The 3D view: fills its parent, draws on demand, and shares selection and camera wishes with the rest of the page
 * through the session. The canvas holds pixels only; names, numbers and controls lie over it as text.
 */
import { Canvas, type Events, useFrame, useThree } from '@react-three/fiber';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { type Camera, NeutralToneMapping, OrthographicCamera, PerspectiveCamera, type Scene as Stage } from 'three';
import { useDisplay } from '../actions/display';
import { useTheme } from '../colours';
import { headerOf } from '../derived';
import { documents, useDocument } from '../document';
import { Drawing, DrawingCard } from '../drawing/Drawing';
import { stopDrawing, useDrawing } from '../drawing/state';
import type { DrawTool } from '../drawing/tool';
import { PlayBar, PlayBeat } from '../forecast/motion/Played';
import { useMotion } from '../forecast/motion/state';
import { useMakeDrawn } from '../making/drawn';
import { MeasureCard } from '../measure/MeasureCard';
import { useMeasured } from '../measure/useMeasured';
import { usePaints } from '../parts/usePaints';
import { useGapsShown } from '../room/gapsShown';
import { liftedBalls, useLifted, useUnlifted } from '../room/lifted';
import { useIsPosed } from '../room/posed';
import { RoomDrawn } from '../room/RoomDrawn';
import { useIsPreview, useShownHeader, useShownReport } from '../route/shown';
import { useSession } from '../session';
import { nudge, openExact } from '../shape/keys';
import { useViewState } from '../viewState';
import { listen } from './camera/gestures';
import { press } from './camera/keys';
import { engineSides } from './camera/presets';
import { createRig, type Rig } from './camera/rig';
import { eyeAxes } from './camera/view';
import { Clip } from './cuts/Clip';
import { CutPanel } from './cuts/CutPanel';
import { gapsOf } from './gaps';
import { Lines } from './gl/Lines';
import { type Picked, type PickedSurface, pick, pickSurface } from './gl/pick';
import { isOwnerHidden } from './hideable';
import { apartBalls, headerBalls, lowest, middleOf } from './model/content';
import { ExplodeSlide } from './overlay/ExplodeSlide';
import { HiddenLine } from './overlay/HiddenLine';
import { Labels } from './overlay/Labels';
import { MakingLine } from './overlay/MakingLine';
import { Pin } from './overlay/Pin';
import { PreviewTag } from './overlay/PreviewTag';
import type { Taken } from './overlay/place';
import { Triad } from './overlay/Triad';
import { ViewStrip } from './overlay/ViewStrip';
import { PALETTES } from './palette';
import { GapMark } from './parts/GapLines';
import { groundReach } from './parts/Ground';
import { MeasureMark, measureNotes } from './parts/MeasureMarks';
import { PictureTaker } from './picture/PictureTaker';
import { Scene } from './Scene';
import { useHiding } from './seen';
import { HandTag } from './shape/HandTag';
import { type Hold, ShapeLayer } from './shape/ShapeLayer';
import { useApart } from './useApart';
import { clickOn, useCuts, useProjection, useSeen } from './useViewTools';
import { useWishes } from './wishes';
import './viewport.css';

/** What the canvas lends to the gestures once it is there. */
type Lent = { scene: Stage; camera(): Camera; redraw(): void; take(camera: Camera): void };

const HINT =
  '3D view of the header. Arrow keys move what is picked or turn the view, shift and arrow keys move the view, plus and minus zoom; the question mark lists every key.';

/** Space left free for the strip and the triad, px. */
const STRIP_PX = 56;
const NONE: ReturnType<typeof useMeasured> = [];

export function Viewport({ plain = wantsPlain() }: { readonly plain?: boolean }) {
  const header = useShownHeader();
  const report = useShownReport();
  // A layout that is only looked at is not shaped or measured.
  const isPreview = useIsPreview();
  const meshes = useDocument((s) => s.meshes);
  const theme = useTheme();
  const palette = PALETTES[theme];
  const selected = useSession((s) => s.selected);
  const display = useDisplay();
  const mark = useSession((s) => s.mark);
  const ask = useSession((s) => s.ask);
  const root = useRef<HTMLDivElement>(null);
  const surface = useRef<HTMLDivElement>(null);
  const hold = useRef<Hold | null>(null);
  const drawn = useRef<DrawTool | null>(null);
  const surfaceUnder = useRef<(at: readonly [number, number]) => PickedSurface | null>(() => null);
  const under = useCallback((at: readonly [number, number]) => surfaceUnder.current(at), []);
  const marks = useRef<readonly Taken[]>([]);
  const clicked = useRef<(at: readonly [number, number]) => void>(() => {});
  const onTubeClick = useCallback((at: readonly [number, number]) => clicked.current(at), []);
  const lent = useRef<Lent | null>(null);
  const [size, setSize] = useState<{ width: number; height: number } | null>(null);

  const [cameras] = useState(() => {
    const perspective = Object.assign(new PerspectiveCamera(), { manual: true });
    const flat = Object.assign(new OrthographicCamera(), { manual: true });
    return { perspective, flat };
  });
  const [rig] = useState(() =>
    createRig(cameras.perspective, cameras.flat, {
      redraw: () => lent.current?.redraw(),
      take: (camera) => lent.current?.take(camera),
      still: () => matchMedia('(prefers-reduced-motion: reduce)').matches,
    }),
  );

  const paints = usePaints();
  const sides = engineSides(header);
  const parallel = useProjection(rig);
  const seen = useSeen(header);
  const lifted = useLifted();
  // Names, handles and dimensions belong to where it stands at rest.
  const isPosed = useIsPosed();
  const hiding = useHiding();
  const { made, parts, exploded, goal } = useApart(header);
  const isApart = useViewState((s) => s.exploded > 0);
  const underBar = useMotion((s) => s.hidden);
  const seenParts = useMemo(
    () => (header ? parts.filter(({ of }) => !isOwnerHidden(of, header, hiding)) : []),
    [parts, header, hiding],
  );
  const balls = useMemo(
    () =>
      seen
        ? [...headerBalls(seen), ...apartBalls(seen, seenParts, goal), ...(lifted ? liftedBalls(seen, lifted) : [])]
        : [],
    [seen, seenParts, goal, lifted],
  );
  const { extent, planes, isGone } = useCuts(seen);
  const measurements = useMeasured();
  const measured = isPreview || isApart ? NONE : measurements;
  const dimensions = useMemo(() => measureNotes(measured, display), [measured, display]);
  const around = useMemo(() => middleOf(balls), [balls]);
  const ground = useMemo(() => (header ? lowest(header, meshes) - 1 : 0), [header, meshes]);
  const room = useGapsShown(isPreview);
  const named = useUnlifted(seen, lifted);
  const gaps = useMemo(
    () => (seen && !isApart && !lifted && !isPosed ? gapsOf(seen, report, selected, room) : []),
    [seen, isApart, lifted, isPosed, report, selected, room],
  );

  // Where things stand is drawn on only while they stand there, and nothing else has the pointer.
  const isMeasuring = useViewState((s) => s.measuring);
  const mayDraw = !isPreview && !isApart && !lifted && !isPosed && !isMeasuring;
  const isDrawing = useDrawing((s) => s.shape !== null);
  useEffect(() => {
    if (isDrawing && !mayDraw) stopDrawing();
  }, [isDrawing, mayDraw]);

  const drawnMaking = useMakeDrawn((s) => s.drawn);
  const isAsMade = !isPreview && !isApart && !isPosed && !lifted && drawnMaking?.of === header?.design;
  const asMade = isAsMade ? drawnMaking : null;
  const notes = useMemo(() => [...gaps, ...dimensions, ...(asMade?.notes ?? [])], [gaps, dimensions, asMade]);

  // In an effect before the wishes are answered: a fit must see this header and not the one before.
  useEffect(() => {
    const reach = groundReach(around);
    const deep = Math.hypot(reach, around.at[2] - ground);
    // No frame is asked for: one drawn now would still show the scene as it was, and the new scene asks for its own.
    rig.setContent(balls, { at: around.at, radius: Math.max(deep, around.radius * 3) });
  }, [rig, balls, around, ground]);
  const hasParts = parts.length > 0;
  // biome-ignore lint/correctness/useExhaustiveDependencies: taken apart, or put together again, it needs another distance
  useEffect(() => rig.refit(), [rig, isApart, hasParts]);
  useEffect(() => {
    if (!size) return;
    const strip = (2 * (STRIP_PX + underBar)) / size.height;
    rig.setBorder({ left: 0.09, right: 0.09, top: 0.15, bottom: Math.min(underBar > 0 ? 0.9 : 0.4, 0.06 + strip) });
    rig.setSize(size.width, size.height);
  }, [rig, size, underBar]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: over the bar of the play, and without it again, it needs another distance
  useEffect(() => rig.refit(), [rig, underBar]);
  useWishes(rig, size !== null && balls.length > 0, sides);

  useEffect(() => {
    const element = surface.current!;
    const through = <T,>(by: (...args: Parameters<typeof pick>) => T | null, at: readonly [number, number]) => {
      const box = element.getBoundingClientRect();
      const [x, y] = [((at[0] - box.left) / box.width) * 2 - 1, 1 - ((at[1] - box.top) / box.height) * 2];
      return lent.current ? by(lent.current.scene, lent.current.camera(), x, y, isGone) : null;
    };
    const look = (at: readonly [number, number]): Picked | null => through(pick, at);
    surfaceUnder.current = (at) => through(pickSurface, at);
    const { hover } = useSession.getState();
    const click = (at: readonly [number, number], adds: boolean) => {
      const { design } = documents.store.getState();
      clickOn(look(at), adds, rig, design && headerOf(design));
    };
    clicked.current = (at) => click(at, false);
    return listen(element, rig, {
      hold(e) {
        if (drawn.current) return drawn.current.hold(e);
        const { measuring, exploded } = useViewState.getState();
        if (measuring || exploded > 0) return false;
        const found = look([e.clientX, e.clientY]);
        return found !== null && (hold.current?.onPress(e, found.ref) ?? false);
      },
      tooled: () => drawn.current !== null,
      hover(at) {
        if (drawn.current) {
          hover(null);
          drawn.current.hover(at);
          return;
        }
        const found = at ? look(at) : null;
        hover(found?.ref ?? null);
        element.dataset.over = found ? 'part' : '';
      },
      click(at, adds) {
        if (!drawn.current) click(at, adds);
      },
      doubleClick(at) {
        if (drawn.current) return;
        const found = look(at);
        if (found) ask({ kind: 'look', at: found.at, radius: 60 });
      },
      under: (at) => look(at)?.at ?? null,
      dragging(on) {
        element.dataset.drag = on ? 'on' : '';
      },
    });
  }, [rig, ask, isGone]);

  return (
    <div
      ref={root}
      className="viewport"
      role="application"
      aria-label={HINT}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the view is operated by keys of its own
      tabIndex={0}
      onKeyDown={(e) => {
        if (e.target !== root.current) return;
        // With something picked the arrows move it; Alt and an arrow still turn the view.
        const turns = e.altKey && e.key.startsWith('Arrow');
        const shapes = () => (e.key === 'Enter' && openExact()) || nudge(e, eyeAxes(rig.drawn()));
        if ((!isPreview && !isApart && shapes()) || press(turns ? withoutAlt(e) : e, rig)) e.preventDefault();
      }}
    >
      <div ref={surface} className="viewport-surface" data-tool={isDrawing ? 'draw' : undefined}>
        <Canvas
          frameloop="demand"
          flat
          dpr={plain ? 1 : [1, 2]}
          camera={cameras.perspective}
          gl={{ antialias: !plain, alpha: true, toneMapping: NeutralToneMapping, powerPreference: 'high-performance' }}
          events={noEvents}
          aria-hidden="true"
        >
          <Driver rig={rig} lent={lent} onSize={setSize} />
          <PlayBeat />
          {header && (
            <Scene
              header={header}
              meshes={meshes}
              paints={paints}
              palette={palette}
              around={around}
              ground={ground}
              made={made}
              exploded={exploded}
            />
          )}
          {header && !isPreview && !isApart && (
            <RoomDrawn header={header} paints={paints} palette={palette} made={made} />
          )}
          {asMade && <Lines pairs={asMade.welds} colour={palette.dimension} width={3} />}
          {asMade && <Lines pairs={asMade.ends} colour={palette.accent} width={4.5} />}
          <Clip planes={planes} />
          <PictureTaker rig={rig} page={root} />
          {dimensions.map((d) => (
            <MeasureMark key={d.key} note={d} palette={palette} />
          ))}
          {gaps.map((g) => g.line && <GapMark key={g.key} line={g.line} fails={g.fails} palette={palette} />)}
        </Canvas>
        {header && size && mayDraw && <Drawing rig={rig} tool={drawn} under={under} />}
        {seen && size && !isPreview && !isApart && !lifted && !isPosed && !isDrawing && (
          <ShapeLayer rig={rig} header={seen} hold={hold} marks={marks} onClick={onTubeClick} />
        )}
      </div>
      {named && size && !isPosed && (
        <Labels
          rig={rig}
          header={named}
          paints={paints}
          notes={notes}
          cuts={planes}
          parts={seenParts}
          exploded={exploded}
          marks={marks}
        />
      )}
      {mark && size && !isApart && <Pin rig={rig} at={mark} />}
      {seen && size && !isPreview && !isApart && <HandTag rig={rig} header={seen} />}
      <Triad rig={rig} sides={sides} />
      <ViewStrip parallel={parallel} />
      <PreviewTag />
      <MakingLine />
      <PlayBar />
      {header && <HiddenLine header={header} />}
      {header && (
        <div className="viewport-cards">
          <ExplodeSlide card />
          <CutPanel extent={extent} />
          <MeasureCard header={header} />
          <DrawingCard />
        </div>
      )}
    </div>
  );
}

const withoutAlt = ({ key, shiftKey, ctrlKey, metaKey }: Omit<Parameters<typeof press>[0], 'altKey'>) => ({
  key,
  shiftKey,
  ctrlKey,
  metaKey,
  altKey: false,
});

/**
 * Pointer events are read from the page, once for camera and picking, so that a drag is never also a click. The canvas
 * must find handlers, though there are none: else it sets them up anew at each render, and draws a frame for that.
 */
const noEvents = () => ({ enabled: false, priority: 0, handlers: {} as Events });

/** Software rendering in tests: no smoothing of edges, one pixel a pixel. */
function wantsPlain(): boolean {
  return typeof location !== 'undefined' && new URLSearchParams(location.search).has('plain');
}

type DriverProps = {
  readonly rig: Rig;
  readonly lent: { current: Lent | null };
  readonly onSize: (size: { width: number; height: number }) => void;
};

/** Inside the canvas: lets the rig set the camera before each frame. */
function Driver({ rig, lent, onSize }: DriverProps) {
  const get = useThree((s) => s.get);
  const invalidate = useThree((s) => s.invalidate);
  const width = useThree((s) => s.size.width);
  const height = useThree((s) => s.size.height);
  useEffect(() => {
    lent.current = {
      scene: get().scene,
      camera: () => get().camera,
      redraw: () => invalidate(),
      take: (camera) => get().set({ camera: camera as never }),
    };
    invalidate();
    return () => {
      lent.current = null;
    };
  }, [get, invalidate, lent]);
  useEffect(() => {
    if (width > 0 && height > 0) onSize({ width, height });
  }, [width, height, onSize]);
  useFrame(() => {
    if (rig.frame(performance.now())) invalidate();
  }, -1);
  return null;
}
