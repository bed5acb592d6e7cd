/** Where in its motion the header is nearest, in a few words; nothing where it stands still, cold. */
import type { MotionPose } from '../../../geometry/gaps/report';
import { angleNumber } from '../format';

export function poseWords(pose: MotionPose | undefined): string {
  if (!pose) return '';
  const roll = pose.rock === 0 ? [] : [`roll ${pose.rock > 0 ? '+' : ''}${angleNumber(pose.rock)}°`];
  const heat = pose.heat === 0 ? [] : [pose.heat === 1 ? 'hot' : `${Math.round(100 * pose.heat)} % hot`];
  return [...roll, ...heat].join(', ');
}
