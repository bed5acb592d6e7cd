/**
 * What the pipes' walls are to the gas: how warm at full load, how rough. Common practice, from memory: measured skins of headers at
 * full load lie from 800 to 1000 K near the head and fall along the way. One temperature a pipe, but for
 * the port in the head, which whoever joins engine and pipes gives the cooler wall of its own. K, m.
 */
import type { Tooling } from '../../../shared/design/types';
import { metres } from './metres';
import type { PipeRole } from './types';

export const WALL_TEMPERATURES: Readonly<Record<PipeRole, number>> = {
  primary: 900,
  secondary: 850,
  collector: 850,
  tailpipe: 650,
  branch: 900,
  shared: 900,
};

/** Drawn tube, bent; the same cut and welded, whose beads stand proud inside; cast iron as it leaves the sand. mm */
const DRAWN = 0.02;
const WELDED = 0.05;
export const CAST_ROUGHNESS = 0.5;

/** m. What is not said to be bent is cut from stock bends and welded, as everywhere. */
export const tubeRoughness = (tooling?: Pick<Tooling, 'making'>): number =>
  metres(tooling?.making === 'bent' ? DRAWN : WELDED);

export const DRAWN_ROUGHNESS = metres(DRAWN);
