/** Figures of steps, rounded to the workshop's tape and dial and said in the design's unit. mm, degrees. */
import type { Header } from '../../../geometry';
import { settingsOf } from '../../../shared/stock/workshop';
import { toStep } from '../toStep';
import { type Steps, tapeFigure, tapeStep } from './figures';
import type { Figure } from './step';

export type Units = {
  length(name: string, mm: number): Figure;
  angle(name: string, degrees: number): Figure;
  /** A turn to one side, said in words. */
  turn(name: string, degrees: number): Figure;
  /** The same round the tube's outside. */
  around(name: string, mm: number): Figure;
  /** In a sentence: `43.5 mm`. */
  say(mm: number): string;
  readonly steps: Steps;
  dial(degrees: number): number;
};

/** Looking along the tube away from its start, whatever the sign that the workshop gives to rotations. */
export const wayOf = (value: number): string => (value < 0 ? 'counter-clockwise' : 'clockwise');

export function createUnits({ design }: Header): Units {
  const { tape, dial } = settingsOf(design.workshop);
  const steps: Steps = { display: design.display ?? 'mm', tape, dial };
  const toTape = (mm: number) => toStep(mm, tapeStep(steps));
  const toDial = (degrees: number) => toStep(degrees, dial);
  /** Nothing to turn has no way round. */
  const turned = (name: string, kind: 'length' | 'angle', value: number): Figure => ({
    name,
    kind,
    value: Math.abs(value),
    ...(value !== 0 && { way: wayOf(value) }),
  });
  return {
    length: (name, mm) => ({ name, kind: 'length', value: toTape(mm) }),
    angle: (name, degrees) => ({ name, kind: 'angle', value: toDial(degrees) }),
    turn: (name, degrees) => turned(name, 'angle', toDial(degrees)),
    around: (name, mm) => turned(name, 'length', toTape(mm)),
    say: (mm) => `${tapeFigure(mm, steps)} ${steps.display}`,
    steps,
    dial: toDial,
  };
}
