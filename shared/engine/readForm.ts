/**
 * An engine form from a file's text: strict JSON of the right shape, then formProblems.ts. Unknown fields are refused
 * nowhere and used nowhere, as in a design.
 */
import { z } from 'zod';
import { valueAt } from '../design/ids';
import { readJson } from '../design/json';
import { MAX_CYLINDERS, MAX_TEXT } from '../design/limits';
import { DesignError, describe } from '../design/refusal';
import { ARRANGEMENTS, type EngineForm } from './form';
import { formProblems } from './formProblems';

/** From a file's text. @throws DesignError naming the path */
export function readForm(text: string): EngineForm {
  const value = readJson(text);
  const result = shape.safeParse(value);
  if (!result.success) {
    throw new DesignError(
      result.error.issues.map((issue) => ({
        path: issue.path.map(String).join('/') || 'form',
        found: describe(valueAt(value, issue.path)),
        allowed: issue.message,
      })),
    );
  }
  const problems = formProblems(value as EngineForm);
  if (problems.length > 0) throw new DesignError(problems);
  return value as EngineForm;
}

const words = {
  number: 'a number',
  vector: 'three numbers, [x, y, z]',
  cylinders: 'a list of cylinder numbers',
  text: `text of at most ${MAX_TEXT} characters on one line`,
};
const number = z.number(words.number);
const vector = z.tuple([number, number, number], words.vector);
const cylinders = z.array(z.number(words.cylinders), words.cylinders).max(MAX_CYLINDERS, words.cylinders);
const text = z
  .string(words.text)
  .max(MAX_TEXT, words.text)
  .regex(/^\P{Cc}*$/u, words.text);
const oneOf = <const T extends readonly string[]>(names: T) =>
  z.enum(names, `one of ${names.map((n) => `"${n}"`).join(', ')}`);
const object = <T extends z.ZodRawShape>(fields: T) => z.object(fields, 'an object');
const valve = object({ count: number, diameter: number, lift: number, opens: number, closes: number });
const tubeForm = object({
  tube: object({ outsideDiameter: number, wall: number, material: text.exactOptional() }),
  tooling: object({
    making: oneOf(['bent', 'welded']).exactOptional(),
    centerlineRadius: number,
    otherRadii: z.array(number, 'a list of radii').exactOptional(),
    firstStraight: number,
    betweenStraight: number,
    lastStraight: number,
    maxBendAngle: number,
    maxBends: number,
    trimStart: number.exactOptional(),
    trimEnd: number.exactOptional(),
  }),
  length: number.nullable(),
});

const shape = object({
  title: text,
  display: oneOf(['mm', 'in']),
  cylinders: number,
  banks: z.array(
    object({ cylinders, firstPort: vector, pitch: number, direction: vector, up: vector }),
    'a list of banks',
  ),
  firingOrder: cylinders,
  bore: number.exactOptional(),
  stroke: number.exactOptional(),
  rod: number.exactOptional(),
  compressionRatio: number.exactOptional(),
  rpm: z.tuple([number, number], 'two numbers, lowest and highest rpm').exactOptional(),
  intakeValve: valve.exactOptional(),
  exhaustValve: valve.exactOptional(),
  port: object({
    opening: z.discriminatedUnion(
      'shape',
      [
        object({ shape: z.literal('round'), diameter: number }),
        object({ shape: z.literal('rounded-rectangle'), width: number, height: number, corner: number }),
        object({ shape: z.literal('oval'), width: number, height: number }),
      ],
      'an object whose shape is "round", "rounded-rectangle" or "oval"',
    ),
    angle: number,
    lengthInHead: number,
  }),
  flange: object({
    thickness: number,
    gasket: number,
    material: text,
    thread: text,
    hole: number,
    studLength: number,
  }),
  arrangement: oneOf(ARRANGEMENTS),
  primary: tubeForm,
  secondary: tubeForm.nullable(),
  tolerance: number,
  collectors: z.array(
    object({
      cylinders,
      position: vector,
      axis: vector,
      outletDiameter: number,
      length: number,
      outletJoint: oneOf(['slip', 'band-clamp', 'flange', 'flexible', 'weld']).exactOptional(),
    }),
    'a list of collectors',
  ),
  tubeToTube: number,
});

/** Fails to compile when the shape and the type drift apart. */
export type SameAsForm = z.output<typeof shape> extends EngineForm ? true : never;
export const sameAsForm: SameAsForm = true;
