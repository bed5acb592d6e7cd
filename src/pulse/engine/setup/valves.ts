/** Valves of both sides: as given, or by common practice from the bore. mm and crank degrees in, SI out. */
import type { Refusal } from '../../../../shared/design/refusal';
import type { Design, Valve } from '../../../../shared/design/types';
import { formFields } from '../../../../shared/engine/formFields';
import type { ValveSetup } from '../types';
import { eventProblem, type Side } from './events';
import { usualFlow } from './flowCoefficients';
import { smoothLifts, trimmedLifts } from './liftCurve';
import { assume, type Notes, PRACTICE, refuse, told } from './notes';
import { EVENTS, LIFT_PER_DIAMETER, VALVE_PER_BORE } from './usual';

const MM = 1e-3;

export type Valves = { readonly intake: Valve; readonly exhaust: Valve };

/** In the document's units, nothing left out but the two tables. Refuses what cannot be valves of this bore. */
export function valvesOf({ engine = {} }: Design, bore: number, notes: Notes): Valves {
  const { intakeValve, exhaustValve } = engine;
  const intake = intakeValve ?? usualValve('intake', bore, exhaustValve, notes);
  const exhaust = exhaustValve ?? usualValve('exhaust', bore, intakeValve, notes);
  const before = notes.problems.length;
  if (intakeValve) notes.problems.push(...givenProblems('intake', intakeValve));
  if (exhaustValve) notes.problems.push(...givenProblems('exhaust', exhaustValve));
  const heads = intake.count * intake.diameter ** 2 + exhaust.count * exhaust.diameter ** 2;
  if (notes.problems.length === before && heads > bore ** 2) {
    const which = intakeValve ? 'intakeValve' : 'exhaustValve';
    const found = `${intake.count} × ${told(intake.diameter)} mm and ${exhaust.count} × ${told(exhaust.diameter)} mm`;
    refuse(notes, `engine/${which}/diameter`, found, `valve heads that cover no more than the bore of ${bore} mm does`);
  }
  return { intake, exhaust };
}

const pathOf = (side: Side): string => `engine/${side}Valve`;
const NAMES = { intake: 'Intake', exhaust: 'Exhaust' } as const;

function usualValve(side: Side, bore: number, other: Valve | undefined, notes: Notes): Valve {
  const one = other?.count === 1;
  const count = one ? 1 : 2;
  const perBore = VALVE_PER_BORE[side][one ? 'one' : 'several'];
  const diameter = tenth(perBore * bore);
  const lift = tenth(LIFT_PER_DIAMETER[side] * diameter);
  const [opens, closes] = EVENTS[side];
  const [path, name] = [pathOf(side), NAMES[side]];
  const why = other ? `as many as the other side has, or two, ${PRACTICE}` : PRACTICE;
  assume(notes, `${path}/count`, `${name} valves`, `${count} a cylinder`, why);
  assume(notes, `${path}/diameter`, `${name} valve`, `${diameter} mm`, `${perBore} × bore, ${PRACTICE}`);
  assume(notes, `${path}/lift`, `${name} lift`, `${lift} mm`, `${LIFT_PER_DIAMETER[side]} × its diameter, ${PRACTICE}`);
  const road = 'a mild road camshaft, common practice';
  assume(notes, `${path}/opens`, `${name} opens`, `${opens}°, ${words(side, 'opens', opens)}`, road);
  assume(notes, `${path}/closes`, `${name} closes`, `${closes}°, ${words(side, 'closes', closes)}`, road);
  return { count, diameter, lift, opens, closes };
}

function words(side: Side, event: 'opens' | 'closes', angle: number): string {
  const bottom = (side === 'intake') === (event === 'closes');
  const off = angle - (bottom ? (side === 'intake' ? 180 : -180) : 0);
  return `${Math.abs(off)}° ${off < 0 ? 'before' : 'after'} the ${bottom ? 'bottom' : 'top'} dead centre`;
}

/** Lift over diameter: less is another unit, more no poppet valve. */
const LEAST_LIFT = 0.05;
const MOST_LIFT = 0.6;

function givenProblems(side: Side, valve: Valve): Refusal[] {
  const path = pathOf(side);
  const problems: Refusal[] = [];
  const { least, most } = formFields(`${side}Valve/diameter`)!;
  if (valve.diameter < least || valve.diameter > most)
    problems.push({
      path: `${path}/diameter`,
      found: `${valve.diameter} mm`,
      allowed: `from ${least} to ${most} mm across the head; in cm × 10, in inches × 25.4`,
    });
  else {
    const lift = valve.lifts ? Math.max(...valve.lifts.map(([, y]) => y)) : valve.lift;
    const ratio = lift / valve.diameter;
    if (ratio < LEAST_LIFT || ratio > MOST_LIFT)
      problems.push({
        path: `${path}/${valve.lifts ? 'lifts' : 'lift'}`,
        found: `${lift} mm at most, of a head ${valve.diameter} mm across`,
        allowed: `from ${told(LEAST_LIFT * valve.diameter)} to ${told(MOST_LIFT * valve.diameter)} mm; in cm × 10, in inches × 25.4`,
      });
  }
  const lifts = valve.lifts && trimmedLifts(valve.lifts);
  const event = lifts
    ? eventProblem(`${path}/lifts`, side, [lifts[0]![0], lifts.at(-1)![0]], 'lifts')
    : eventProblem(`${path}/opens`, side, [valve.opens, valve.closes], 'events');
  if (event) problems.push(event);
  return problems;
}

export function valveSetup(side: Side, valve: Valve, notes: Notes): ValveSetup {
  const { count, diameter, lift, opens, closes } = valve;
  const [path, name] = [pathOf(side), NAMES[side]];
  if (!valve.lifts) {
    const curve = `a smooth curve from ${opens}° to ${closes}°, ${lift} mm high`;
    assume(notes, `${path}/lifts`, `${name} lift curve`, curve, 'a form of our own, until it is measured');
  }
  if (!valve.flow) {
    const flow = usualFlow(side);
    const quarter = flow.find(([ratio]) => ratio === 0.25)![1];
    const span = `${flow[0]![1]} of the curtain area just open to ${quarter} at a quarter of the diameter`;
    assume(notes, `${path}/flow`, `${name} flow`, span, 'textbook values, until a flow bench tells');
  }
  const lifts = valve.lifts ? trimmedLifts(valve.lifts) : smoothLifts(opens, closes, lift);
  return {
    count,
    diameter: diameter * MM,
    lifts: lifts.map(([angle, y]) => [angle, y * MM] as const),
    flow: valve.flow ?? usualFlow(side),
  };
}

const tenth = (x: number): number => Math.round(10 * x) / 10;
