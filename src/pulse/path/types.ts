/**
 * The way of the burnt gas from the valves to the open air: pipes and what joins them, made of a laid-out header, a cast-manifold
 * stand-in or a sketch of lengths and diameters. The engine's own ends close it. SI units; pipes run with the flow.
 */
import type { PipeEnd, RigEnd } from '../rig/types';

export type PipeRole = 'primary' | 'secondary' | 'collector' | 'tailpipe' | 'branch' | 'shared';

export type PathPipe = {
  readonly id: string;
  readonly role: PipeRole;
  /** m */
  readonly length: number;
  /** Piecewise linear: [x, inside diameter], from 0 to the length. A primary begins at the valve: the port in the head is its first part. */
  readonly diameter: readonly (readonly [x: number, diameter: number])[];
  /** Height, m. */
  readonly roughness: number;
  /** K */
  readonly wallTemperature: number;
  /** m of its start that lie in the head. */
  readonly inHead: number;
  /** The design's part that it is made of; null for what is not drawn. */
  readonly part: { readonly runner: string } | { readonly merge: string } | null;
};

/** Where a cylinder's exhaust valves are: the start of this pipe. A cylinder with two ports has two, each with its share of the valves. */
export type ValvePlace = { readonly cylinder: number; readonly pipe: string; readonly share: number };

/** Joints and openings: everything that a rig knows but vessels. */
export type PathEnd = Exclude<RigEnd, { readonly kind: 'vessel' }>;

export type GasPath = {
  /** Words for the user: "laid-out header", "cast manifold", "sketch". */
  readonly title: string;
  readonly pipes: readonly PathPipe[];
  readonly ends: readonly PathEnd[];
  readonly valves: readonly ValvePlace[];
};

export type { PipeEnd };
