/**
 * Where the waves of a play come into the 3D view: its beat, tubes, collectors and bar, loaded when something is first played. Until they
 * are there, a tube or collector is drawn as it is at rest.
 */
import { lazy, type ReactNode, Suspense } from 'react';
import { useMotion } from './state';
import type { WaveCollectorProps, WaveTubeProps } from './WaveTube';

const play = () => import('./play');
const Beat = lazy(async () => ({ default: (await play()).Beat }));
const MotionBar = lazy(async () => ({ default: (await play()).MotionBar }));
const WaveTube = lazy(async () => ({ default: (await play()).WaveTube }));
const WaveCollector = lazy(async () => ({ default: (await play()).WaveCollector }));

type Props = { readonly atRest?: ReactNode; readonly children: ReactNode };

function WhilePlaying({ atRest = null, children }: Props) {
  const plays = useMotion((s) => s.run !== null);
  return plays ? <Suspense fallback={atRest}>{children}</Suspense> : atRest;
}

export const PlayedTube = (props: WaveTubeProps) => (
  <WhilePlaying atRest={props.atRest}>
    <WaveTube {...props} />
  </WhilePlaying>
);

export const PlayedCollector = (props: WaveCollectorProps) => (
  <WhilePlaying atRest={props.atRest}>
    <WaveCollector {...props} />
  </WhilePlaying>
);

/** Within the canvas. */
export const PlayBeat = () => (
  <WhilePlaying>
    <Beat />
  </WhilePlaying>
);

/** Over the canvas. */
export const PlayBar = () => (
  <WhilePlaying>
    <MotionBar />
  </WhilePlaying>
);
