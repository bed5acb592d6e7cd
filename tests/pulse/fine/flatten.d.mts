import type { Rig } from '../../../src/pulse/rig/types';
export function flatten(rig: Rig): string;
