/** Waves in every pipe along one cylinder's way, over crank angle. */
import type { FaceProps } from './runs';

export function WaveFace({ runs }: FaceProps) {
  return <section aria-label="Waves in the pipes">{runs.map(({ name }) => name).join(', ')}</section>;
}
