/** A runner and a collector while waves play on them: the quick picture's mesh, coloured along its length anew for every picture. */
import { useFrame } from '@react-three/fiber';
import { type ReactNode, useMemo, useRef } from 'react';
import { BufferAttribute, type BufferGeometry } from 'three';
import { type ResolvedMerge, type ResolvedRunner, trimmedLine } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import type { Ref } from '../../session';
import { InkedMesh } from '../../viewport/gl/InkedMesh';
import { useOwned } from '../../viewport/gl/owned';
import type { Pickable } from '../../viewport/gl/pick';
import { satin } from '../../viewport/gl/satin';
import { surface } from '../../viewport/gl/surface';
import { collectorMesh } from '../../viewport/model/collectorMesh';
import { tubeMesh } from '../../viewport/model/tubeMesh';
import type { Palette } from '../../viewport/palette';
import { useMotion } from './state';
import { colourCorners, colourRings, type Moment, ringPlaces } from './tubeColours';
import { type PipeWaves, useWaved, type Waved } from './useWaved';

/** Rings are no farther apart, mm: finer than a cell of the flow. */
const STEP = 8;

type Drawn = { readonly palette: Palette; readonly away: Vec3 | undefined };
type AtRest = {
  /** Drawn in its place where no waves are known. */
  readonly atRest: ReactNode;
};
type Common = Drawn & PipeWaves & { readonly waved: Waved };

type TubeProps = { readonly runner: ResolvedRunner; readonly trim: number };
export type WaveTubeProps = TubeProps & Drawn & AtRest;

export function WaveTube({ atRest, ...rest }: WaveTubeProps) {
  const waved = useWaved();
  const waves = waved?.pipes.get(`runner/${rest.runner.runner.id}`);
  return waved && waves ? <Tube waved={waved} {...waves} {...rest} /> : atRest;
}

function Tube({ runner, trim, ...rest }: Common & TubeProps) {
  const { id } = runner.runner;
  const line = useMemo(() => trimmedLine(runner, trim)!, [runner, trim]);
  const mesh = useMemo(
    () => tubeMesh(line, runner.tubeRadius, runner.tube.wall, runner.start.up, STEP),
    [line, runner.tubeRadius, runner.tube.wall, runner.start.up],
  );
  const places = useMemo(() => ringPlaces(mesh.stations, -trim, rest.pipe), [mesh, trim, rest.pipe]);
  return <Coloured {...rest} own={{ kind: 'runner', id }} mesh={mesh} places={places} colour={colourRings} />;
}

type CollectorProps = { readonly merge: ResolvedMerge };
export type WaveCollectorProps = CollectorProps & Drawn & AtRest;

export function WaveCollector({ atRest, ...rest }: WaveCollectorProps) {
  const waved = useWaved();
  const waves = waved?.pipes.get(`merge/${rest.merge.merge.id}`);
  return waved && waves ? <Merge waved={waved} {...waves} {...rest} /> : atRest;
}

function Merge({ merge, ...rest }: Common & CollectorProps) {
  const mesh = useMemo(() => collectorMesh(merge), [merge]);
  const places = useMemo(() => {
    const { position, axis, length } = merge.body;
    const along = (i: number) =>
      [0, 1, 2].reduce((sum, k) => sum + (mesh.positions[3 * i + k]! - position[k]!) * axis[k]!, 0);
    return Float32Array.from({ length: mesh.positions.length / 3 }, (_, i) => {
      const share = Math.min(1, Math.max(0, along(i) / length));
      // Rounded, so that corners of one ring share one place.
      return Math.round(share * rest.pipe.length * 1e4) / 1e4;
    });
  }, [mesh, merge, rest.pipe]);
  return (
    <Coloured
      {...rest}
      own={{ kind: 'merge', id: merge.merge.id }}
      mesh={mesh}
      places={places}
      colour={colourCorners}
    />
  );
}

type ColouredProps = Common & {
  readonly own: Ref;
  readonly mesh: Parameters<typeof surface>[0] & { readonly outerCount: number };
  readonly places: Float32Array;
  readonly colour: typeof colourRings;
};

function Coloured({ waved, picture, palette, away, own, mesh, places, colour }: ColouredProps) {
  const geometry = useOwned(() => painted(mesh), [mesh]);
  // As the room's colours are drawn: what is to be read must not be all gleam.
  const steel = useOwned(() => satin('#ffffff', 0.55, 0.25), []);
  const { kind, id } = own;
  const pick = useMemo((): Pickable => ({ ref: () => ({ kind, id }) as Ref }), [kind, id]);
  const drawn = useRef<readonly unknown[]>([]);
  useFrame(() => {
    const { angle, quantity } = useMotion.getState();
    const now = [angle, quantity, waved, palette, geometry];
    if (now.every((part, k) => part === drawn.current[k])) return;
    drawn.current = now;
    const moment: Moment = { field: waved.field, spread: waved.spread, angle, quantity, theme: palette.theme };
    const attribute = geometry.getAttribute('color') as BufferAttribute;
    colour(attribute.array as Float32Array, mesh.shades, places, picture, moment);
    attribute.needsUpdate = true;
  });
  return (
    <group position={away ?? STAYS}>
      <InkedMesh
        geometry={geometry}
        outerCount={mesh.outerCount}
        material={steel}
        palette={palette}
        emphasis="none"
        pick={pick}
        cutColour={palette.steel}
      />
    </group>
  );
}

const STAYS: Vec3 = [0, 0, 0];

/** With colours of its own, finer than bytes. */
function painted(mesh: Parameters<typeof surface>[0]): BufferGeometry {
  const geometry = surface(mesh);
  geometry.setAttribute('color', new BufferAttribute(new Float32Array(mesh.shades.length), 3));
  return geometry;
}
