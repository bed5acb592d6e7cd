/** Bore and stroke, without which there is no engine, and what follows from them by practice: rod, compression, speeds. mm, rpm. */
import { describe } from '../../../../shared/design/refusal';
import type { Design } from '../../../../shared/design/types';
import { formFields } from '../../../../shared/engine/formFields';
import { givenOr, type Notes, PRACTICE, refuse, told } from './notes';
import { COMPRESSION_RATIO, ROD_PER_STROKE, SPEEDS } from './usual';

export type Sizes = {
  readonly bore: number;
  readonly stroke: number;
  readonly rod: number;
  readonly compressionRatio: number;
  readonly speeds: readonly [number, number];
};

/** null where bore or stroke is missing or absurd, which is refused. */
export function sizesOf({ engine = {} }: Design, notes: Notes): Sizes | null {
  const before = notes.problems.length;
  for (const key of ['bore', 'stroke'] as const) {
    if (engine[key] === undefined) needed(notes, key);
    else within(notes, `engine/${key}`, key, engine[key]);
  }
  for (const [i, speed] of (engine.rpm ?? []).entries()) within(notes, `engine/rpm/${i}`, `rpm/${i}`, speed);
  within(notes, 'engine/compressionRatio', 'compressionRatio', engine.compressionRatio);
  const { bore, stroke } = engine;
  if (bore === undefined || stroke === undefined) return null;
  if (engine.rod !== undefined && engine.rod <= stroke / 2) {
    const allowed = `more than half the stroke, ${told(stroke / 2)} mm, from centre to centre`;
    refuse(notes, 'engine/rod', `${engine.rod} mm`, allowed);
  }
  if (notes.problems.length > before) return null;
  const rod = givenOr(notes, 'engine/rod', engine.rod, () => {
    const value = Math.round(ROD_PER_STROKE * stroke);
    return { value, name: 'Rod', taken: `${value} mm`, why: `${ROD_PER_STROKE} × stroke, ${PRACTICE}` };
  });
  const compressionRatio = givenOr(notes, 'engine/compressionRatio', engine.compressionRatio, () => ({
    value: COMPRESSION_RATIO,
    name: 'Compression',
    taken: `${COMPRESSION_RATIO}`,
    why: PRACTICE,
  }));
  const speeds = givenOr(notes, 'engine/rpm', engine.rpm, () => ({
    value: SPEEDS,
    name: 'Speeds',
    taken: `${SPEEDS[0]} to ${SPEEDS[1]} rpm`,
    why: PRACTICE,
  }));
  return { bore, stroke, rod, compressionRatio, speeds };
}

function needed(notes: Notes, key: 'bore' | 'stroke'): void {
  const { meaning, least, most } = formFields(key)!;
  const allowed = `${meaning.toLowerCase()}, from ${least} to ${most} mm: no engine can be followed without it`;
  refuse(notes, `engine/${key}`, 'nothing', allowed);
}

/** The bounds of the engine form, which keep out slips of the hand, not unusual engines. */
function within(notes: Notes, path: string, field: string, value: number | undefined): void {
  const { least, most, unit, meaning } = formFields(field)!;
  if (value === undefined || (value >= least && value <= most)) return;
  const other = unit === 'mm' ? '; in cm × 10, in inches × 25.4' : '';
  refuse(
    notes,
    path,
    describe(value),
    `from ${least} to ${most}${unit && ` ${unit}`} (${meaning.toLowerCase()})${other}`,
  );
}
