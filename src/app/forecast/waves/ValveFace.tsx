/** Pressures on both sides of a cylinder's valves over crank angle. */
import type { FaceProps } from './runs';

export function ValveFace({ runs }: FaceProps) {
  return <section aria-label="Pressures at the valves">{runs.map(({ name }) => name).join(', ')}</section>;
}
