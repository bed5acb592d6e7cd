import type { Rig } from '../../../src/pulse/rig/types';
export function build(source: string): string | null;
export function solve(
  program: string,
  rig: Rig,
  times: number,
  options?: { readonly courant?: number; readonly profile?: boolean },
): { readonly said: string; readonly rows: number[][]; readonly cells: number[][] };
