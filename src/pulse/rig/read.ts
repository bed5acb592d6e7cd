/**
 * A rig document as text → a rig that can be run, or every reason why not, each with its place and remedy. In stages, each safe
 * because of the one before: text → plain finite data → the right version → the right shape → numbers and parts that fit each other.
 */
import { readJson } from '../../../shared/design/json';
import { describe, insist, type Refusal } from '../../../shared/design/refusal';
import { survey } from '../../../shared/design/survey';
import { substanceNames } from '../equations/substances';
import { endProblems } from './endProblems';
import { MAX_RIG_BYTES } from './limits';
import { normalised } from './normalised';
import { idProblems, pipeProblems, probeProblems } from './pipeProblems';
import type { ShapedRig } from './shape';
import { shapeProblems } from './shapeProblems';
import { sizeProblems } from './sizeProblems';
import { stateProblems } from './stateProblems';
import type { Rig } from './types';

export const FORMAT = 'evenrun-rig';
export const VERSION = 1;

/**
 * What may be left out is filled in: `DEFAULTS` in normalised.ts has it.
 * @throws DesignError with every refusal of the stage that failed
 */
export function readRig(text: string): Rig {
  // No text has fewer bytes than characters, so the longest are refused unweighed.
  const isLong = text.length > MAX_RIG_BYTES;
  const bytes = isLong ? text.length : new TextEncoder().encode(text).length;
  if (bytes > MAX_RIG_BYTES) {
    const found = `${isLong ? 'at least ' : ''}${bytes} bytes`;
    insist([{ path: 'document', found, allowed: `at most ${MAX_RIG_BYTES}` }]);
  }
  return validateRig(readJson(text));
}

/** @throws DesignError */
export function validateRig(value: unknown): Rig {
  insist(survey(value));
  insist(kindProblems(value));
  insist(shapeProblems(value));
  const rig = value as ShapedRig;
  insist(idProblems(rig));
  insist([...pipeProblems(rig), ...endProblems(rig), ...probeProblems(rig), ...stateProblems(rig, substanceNames)]);
  insist(sizeProblems(rig));
  return normalised(rig);
}

/** Is it a rig at all, and one of ours to read? */
function kindProblems(value: unknown): Refusal[] {
  if (value === null || typeof value !== 'object' || Array.isArray(value)) {
    return [{ path: 'document', found: describe(value), allowed: 'an object' }];
  }
  const { format, version } = value as { format?: unknown; version?: unknown };
  if (format !== FORMAT) {
    const design = format === 'evenrun-design' ? ', a rig of pipes; this file is the design of a header' : '';
    return [{ path: 'format', found: describe(format), allowed: `"${FORMAT}"${design}` }];
  }
  if (version === VERSION) return [];
  const newer = typeof version === 'number' && version > VERSION;
  const allowed = `${VERSION}${newer ? '; this file is from a newer Evenrun: update to open it' : ''}`;
  return [{ path: 'version', found: describe(version), allowed }];
}
