/** The form of `checker-results.json` (see record.ts). mm and degrees. */
import { readFileSync } from 'node:fs';
import type { Change } from './mutate';

export type CheckerProblem = {
  readonly rule: string;
  readonly where: string;
  readonly found: number | readonly number[];
  readonly allowed: number | readonly [length: number, tolerance: number];
};
type Least = { readonly gap: number; readonly between: readonly [string, string] } | null;

export type Recorded = {
  readonly known: readonly {
    readonly name: string;
    readonly quality: { readonly bends: number; readonly angle: number; readonly length: number };
    readonly runners: readonly {
      readonly id: string;
      readonly length: number;
      readonly centerline: number;
      readonly angles: readonly number[];
      readonly straights: readonly number[];
    }[];
    readonly clearance: { readonly tubeToTube: Least; readonly surroundings: Least; readonly mergeBodies: Least };
  }[];
  readonly mutations: readonly {
    readonly name: string;
    readonly change: Change;
    readonly problems: readonly CheckerProblem[];
  }[];
};

export const recorded = JSON.parse(readFileSync(new URL('checker-results.json', import.meta.url), 'utf8')) as Recorded;
