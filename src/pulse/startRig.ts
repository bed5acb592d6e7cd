/** The one file that joins gas, scheme, walls and ends into a run of a rig. */
import type { Running, RunOptions } from './report';
import type { Rig } from './rig/types';

/** @param rig as `readRig` answers it */
export function startRig(_rig: Rig, _options: RunOptions = {}): Running {
  throw new Error('not joined yet');
}
