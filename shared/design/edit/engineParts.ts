/**
 * What the engine model takes, part by part: each edit puts a whole part in place of what was there, or takes it away where it is
 * given `undefined`. Single numbers of a part: setFields.
 */
import { torqueProblems } from '../baselineRules';
import type { Design, Engine, Exhaust, Valve } from '../types';
import type { Edited } from './edited';
import { setFields } from './setFields';

const ofEngine =
  <K extends keyof Engine>(key: K) =>
  (design: Design, value: Engine[K] | undefined): Edited =>
    setFields(design, [[['engine', key], value]]);

export const setFiringAngles = ofEngine('firingAngles');
export const setIntake = ofEngine('intake');
export const setCombustion = ofEngine('combustion');
export const setAir = ofEngine('air');
export const setFitted = ofEngine('fitted');

/** A curve that is clearly in another unit is refused here, where it is entered, with the unit that would make sense. */
export function setBaseline(design: Design, value: Engine['baseline'] | undefined): Edited {
  const edited = setFields(design, [[['engine', 'baseline'], value]]);
  if (!edited.ok) return edited;
  const [problem] = torqueProblems(edited.design.engine ?? {});
  return problem ? { ok: false, refusal: problem } : edited;
}

/** A curve or a table of a valve that is given; where the valve is not, it is refused for what the valve lacks. */
const ofValve =
  <K extends 'lifts' | 'flow'>(key: K) =>
  (design: Design, valve: 'intakeValve' | 'exhaustValve', value: Valve[K] | undefined): Edited =>
    setFields(design, [[['engine', valve, key], value]]);

export const setLifts = ofValve('lifts');
export const setFlow = ofValve('flow');

const ofExhaust =
  <K extends keyof Exhaust>(key: K) =>
  (design: Design, value: Exhaust[K] | undefined): Edited =>
    setFields(design, [[['exhaust', key], value]]);

export const setTailpipe = ofExhaust('tailpipe');
export const setCast = ofExhaust('cast');
export const setSketch = ofExhaust('sketch');
