/** A refusal as the page says it: the name of the field instead of its path, "not given" instead of "nothing". */
import type { Refusal } from '../../../shared/design/refusal';
import {
  AIR,
  CAST,
  COMBUSTION,
  CYLINDER,
  INTAKE,
  SKETCH,
  SKETCH_SECONDARY,
  TAILPIPE,
  valveFields,
} from './engine/fields';
import type { FieldWish } from './engine/SetupField';

/** Parts that have a section of their own; a field of one is named with it. */
const PARTS: readonly (readonly [path: string, name: string])[] = [
  ['engine/exhaustValve', 'Exhaust valve'],
  ['engine/intakeValve', 'Intake valve'],
  ['engine/intake', 'Intake'],
  ['engine/combustion', 'Combustion'],
  ['engine/air', 'Air outside'],
  ['engine/baseline', 'Measured curve'],
  ['engine/fitted', 'Fit to the measured curve'],
  ['engine/cylinders', 'Cylinders'],
  ['engine/banks', 'Banks'],
  ['engine/firingOrder', 'Firing order'],
  ['engine/firingAngles', 'Fires at'],
  ['engine/rpm/0', 'Used from'],
  ['engine/rpm/1', 'Used to'],
  ['engine/rpm', 'Speeds'],
  ['engine', 'Engine'],
  ['exhaust/tailpipe', 'Behind the header'],
  ['exhaust/cast', 'Cast manifold'],
  ['exhaust/sketch', 'Sketch of a header'],
  ['runners', 'Runners'],
  ['ports', 'Ports'],
];

const FIELDS: ReadonlyMap<string, FieldWish> = new Map(
  [
    ...CYLINDER,
    ...valveFields('exhaustValve'),
    ...valveFields('intakeValve'),
    ...INTAKE,
    ...COMBUSTION,
    ...AIR,
    ...TAILPIPE,
    ...CAST,
    ...SKETCH,
    ...SKETCH_SECONDARY,
  ].map((field) => [field.path, field]),
);

const isIn = (path: string, part: string): boolean => path === part || path.startsWith(`${part}/`);

/** "Bore"; "Exhaust valve, lift"; "Runner r1"; of a place without a name its path. */
export function placeName(path: string): string {
  if (path === '') return 'The design';
  const part = PARTS.find(([at]) => isIn(path, at));
  const field = FIELDS.get(path);
  if (field) return part && part[0] !== 'engine' ? `${part[1]}, ${field.label.toLowerCase()}` : field.label;
  const [list, id] = path.split('/');
  if (id !== undefined && (list === 'runners' || list === 'ports'))
    return `${list === 'runners' ? 'Runner' : 'Port'} ${id}`;
  if (!part) return path;
  const point = /^engine\/baseline\/points\/(\d+)/.exec(path);
  if (point) return `${part[1]}, point ${Number(point[1]) + 1}`;
  const last = path.slice(part[0].length + 1);
  return last === '' ? part[1] : `${part[1]}, ${last.replaceAll('/', ' ')}`;
}

/** Runners that are not laid, and no sketch in their place: mended on the bench or on this page, not at the command line. */
export const isNotLaid = ({ path, allowed }: Refusal): boolean =>
  /^runners(\/|$)/.test(path) && allowed.includes('exhaust/sketch');

/** "Bore: not given. Wanted: diameter of a cylinder, from 20 to 250 mm." */
export function refusalText(refusal: Refusal): { readonly place: string; readonly text: string } {
  const { path, found, allowed } = refusal;
  const place = placeName(path);
  if (isNotLaid(refusal)) {
    const what = path === 'runners' ? 'there is none yet' : found.replace(/^nothing: /, '');
    return { place: 'Runners', text: `${what}. Lay them on the bench, or sketch lengths and bores here.` };
  }
  const was = found === 'nothing' ? 'not given' : found.startsWith('nothing,') ? `not given${found.slice(7)}` : found;
  return { place, text: signed(`${was}. Wanted: ${allowed}.`) };
}

/** With the minus sign that the fields show. */
const signed = (text: string): string => text.replace(/(?<=[\s(])-(?=\d)/g, '−');

export const refusalLine = (refusal: Refusal): string => {
  const { place, text } = refusalText(refusal);
  return `${place}: ${text}`;
};
