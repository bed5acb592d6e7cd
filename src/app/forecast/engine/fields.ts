/** Fields of the engine's form, section by section. mm, cm³, crank degrees, rpm. */
import {
  AIR_PRESSURE,
  AIR_TEMPERATURE,
  BURN_DURATION,
  BURN_MIDDLE,
  COMPRESSION,
  CRANK,
  LAMBDA,
  LENGTH,
  PLENUM,
  type Range,
  RESISTANCE,
  ROUGHNESS,
  SHARE,
  VALVES,
} from '../../../../shared/design/ranges';
import { formFields } from '../../../../shared/engine/formFields';
import type { FieldWish } from './SetupField';

/** The bounds that the engine is refused by, where the form has some: the hint and the refusal say the same. */
const boundsOf = (path: string, otherwise: Range): Range => {
  const field = /^engine\//.test(path) ? formFields(path.slice('engine/'.length)) : undefined;
  return field ? { least: field.least, most: field.most } : otherwise;
};

const mm = (path: string, label: string, meaning: string, needed = false): FieldWish => ({
  path,
  label,
  quantity: 'length',
  range: boundsOf(path, LENGTH),
  meaning,
  needed,
});

const crank = (path: string, label: string): FieldWish => ({
  path,
  label,
  quantity: 'angle',
  range: CRANK,
  meaning: 'crank degrees from top dead centre of the exhaust stroke',
  needed: true,
});

export const CYLINDER: readonly FieldWish[] = [
  mm('engine/bore', 'Bore', 'diameter of a cylinder'),
  mm('engine/stroke', 'Stroke', 'travel of the piston'),
  mm('engine/rod', 'Rod', 'connecting rod, centre to centre'),
  {
    path: 'engine/compressionRatio',
    label: 'Compression',
    quantity: 'plain',
    range: boundsOf('engine/compressionRatio', COMPRESSION),
    meaning: 'greatest over least volume of a cylinder',
    unit: ': 1',
    step: 0.1,
  },
];

export const valveFields = (key: 'intakeValve' | 'exhaustValve'): readonly FieldWish[] => [
  {
    path: `engine/${key}/count`,
    label: 'Per cylinder',
    quantity: 'count',
    range: VALVES,
    meaning: 'how many a cylinder has',
    needed: true,
  },
  mm(`engine/${key}/diameter`, 'Diameter', 'of the head of the valve', true),
  { ...mm(`engine/${key}/lift`, 'Lift', 'at most', true), step: 0.1 },
  crank(`engine/${key}/opens`, 'Opens'),
  crank(`engine/${key}/closes`, 'Closes'),
];

/** How a cam card's numbers are typed: where they are counted from is seen before one is wrong. */
export const CAM_NOTES = {
  exhaustValve: 'Crank degrees from TDC of the exhaust stroke: 52° before BDC is −232, 10° after TDC is 10.',
  intakeValve: 'Crank degrees from TDC of the exhaust stroke: 12° before TDC is −12, 48° after BDC is 228.',
} as const;

export const INTAKE: readonly FieldWish[] = [
  mm('engine/intake/runnerLength', 'Runner length', 'valve to plenum or mouth, the port in the head with it'),
  mm('engine/intake/runnerDiameter', 'Runner bore', 'inside'),
  {
    path: 'engine/intake/plenumVolume',
    label: 'Plenum',
    quantity: 'plain',
    range: PLENUM,
    meaning: '0: none, each runner is open to the air',
    unit: 'cm³',
    step: 100,
  },
  mm('engine/intake/throttleDiameter', 'Throttle', 'of one opening that all air passes, wide open'),
];

export const COMBUSTION: readonly FieldWish[] = [
  {
    path: 'engine/combustion/lambda',
    label: 'Lambda',
    quantity: 'plain',
    range: LAMBDA,
    meaning: 'air over what the fuel needs: below 1 rich',
    step: 0.01,
  },
  {
    path: 'engine/combustion/burnMiddle',
    label: 'Half burnt',
    quantity: 'angle',
    range: BURN_MIDDLE,
    meaning: 'crank degrees after top dead centre at which half of the heat is released',
  },
  {
    path: 'engine/combustion/burnDuration',
    label: 'Burns for',
    quantity: 'angle',
    range: BURN_DURATION,
    meaning: 'from the first to the last of the heat, crank degrees',
  },
  {
    path: 'engine/combustion/efficiency',
    label: 'Released',
    quantity: 'plain',
    range: SHARE,
    meaning: 'share of the heat that the air can release',
    step: 0.01,
  },
];

export const AIR: readonly FieldWish[] = [
  {
    path: 'engine/air/pressure',
    label: 'Pressure',
    quantity: 'plain',
    range: AIR_PRESSURE,
    meaning: 'of the air outside, where the engine runs',
    unit: 'hPa',
  },
  {
    path: 'engine/air/temperature',
    label: 'Temperature',
    quantity: 'plain',
    range: AIR_TEMPERATURE,
    meaning: 'of the air that is drawn in',
    unit: '°C',
  },
];

export const TAILPIPE: readonly FieldWish[] = [
  mm('exhaust/tailpipe/length', 'Length', 'from the last collector to the open air', true),
  mm('exhaust/tailpipe/bore', 'Bore', 'inside', true),
  {
    path: 'exhaust/tailpipe/silencer',
    label: 'Silencer',
    quantity: 'plain',
    range: RESISTANCE,
    meaning: 'stagnation pressure lost over the dynamic pressure in the tailpipe; 0: none',
  },
];

export const CAST: readonly FieldWish[] = [
  mm('exhaust/cast/branch/length', 'Branch length', 'from the valve to the shared passage', true),
  mm('exhaust/cast/branch/bore', 'Branch bore', 'inside', true),
  mm('exhaust/cast/shared/length', 'Shared length', 'from the first branch to the outlet', true),
  mm('exhaust/cast/shared/bore', 'Shared bore', 'inside', true),
  {
    path: 'exhaust/cast/roughness',
    label: 'Roughness',
    quantity: 'length',
    range: ROUGHNESS,
    meaning: 'height of the casting’s skin',
    step: 0.1,
  },
];

export const SKETCH: readonly FieldWish[] = [
  mm('exhaust/sketch/primary/length', 'Primary length', 'from the valve to the first join', true),
  mm('exhaust/sketch/primary/bore', 'Primary bore', 'inside', true),
  mm('exhaust/sketch/collector/length', 'Collector length', 'from its inlets to its outlet', true),
  mm('exhaust/sketch/collector/bore', 'Outlet bore', 'inside', true),
];

export const SKETCH_SECONDARY: readonly FieldWish[] = [
  mm('exhaust/sketch/secondary/length', 'Secondary length', 'from the first joins to the last', true),
  mm('exhaust/sketch/secondary/bore', 'Secondary bore', 'inside', true),
];
