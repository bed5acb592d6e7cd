/** Fields of the engine and its valves. Angles are crank degrees. */
import { checked, setCylinders, setFields, setFiringOrder } from '../../../../shared/design/edit';
import { COMPRESSION, CRANK, LENGTH, VALVES } from '../../../../shared/design/ranges';
import type { Engine, Valve } from '../../../../shared/design/types';
import {
  BANKS_FIELD,
  banksText,
  CYLINDERS_FIELD,
  ORDER_FIELD,
  orderText,
  readBanksText,
  readOrderText,
} from './firing';
import type { FieldSpec, Reading, Section } from './spec';

function readSpeeds(text: string): Reading<unknown> {
  const parts = text.split(/\s*(?:to|[-–,;]|\s)\s*/).filter((part) => part !== '');
  const speeds = parts.map(Number);
  const good = parts.length === 2 && speeds.every(Number.isFinite);
  return good ? { ok: true, value: speeds } : { ok: false, problem: 'Two speeds are wanted, such as 1500 to 7200.' };
}

/** What valves start as when first given: of a size for 85 mm bores (from memory), to be changed. */
const FIRST: Record<'intakeValve' | 'exhaustValve', Valve> = {
  intakeValve: { count: 2, diameter: 32, lift: 9.5, opens: -12, closes: 228 },
  exhaustValve: { count: 2, diameter: 28, lift: 9, opens: -232, closes: 10 },
};

function valve(key: 'intakeValve' | 'exhaustValve', title: string): Section<Engine> {
  const given: FieldSpec<Engine>['when'] = ({ entry }) => entry?.[key] !== undefined;
  return {
    title,
    fields: [
      {
        type: 'choice',
        label: 'Given',
        at: [key],
        choices: [
          { value: 'no', name: 'No' },
          { value: 'yes', name: 'Yes' },
        ],
        get: ({ entry }) => (entry?.[key] ? 'yes' : 'no'),
        set: ({ design, entry }, value) =>
          setFields(design, [[['engine', key], value === 'yes' ? (entry?.[key] ?? FIRST[key]) : undefined]]),
      },
      {
        type: 'number',
        quantity: 'count',
        label: 'A cylinder',
        at: [key, 'count'],
        range: VALVES,
        when: given,
        meaning: 'how many a cylinder has',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Diameter',
        at: [key, 'diameter'],
        range: LENGTH,
        when: given,
        meaning: 'of the head of the valve',
      },
      {
        type: 'number',
        quantity: 'length',
        label: 'Lift',
        at: [key, 'lift'],
        range: LENGTH,
        when: given,
        step: 0.1,
        meaning: 'at most',
      },
      {
        type: 'number',
        quantity: 'angle',
        label: 'Opens',
        at: [key, 'opens'],
        range: CRANK,
        when: given,
        meaning: 'crank degrees from top dead centre of the exhaust stroke',
      },
      {
        type: 'number',
        quantity: 'angle',
        label: 'Closes',
        at: [key, 'closes'],
        range: CRANK,
        when: given,
        meaning: 'crank degrees from top dead centre of the exhaust stroke',
      },
    ],
  };
}

const size = (label: string, at: keyof Engine, meaning: string): FieldSpec<Engine> => ({
  type: 'number',
  quantity: 'length',
  label,
  at: [at],
  optional: true,
  fallback: 'not given',
  range: LENGTH,
  meaning,
});

export const engineSections: readonly Section<Engine>[] = [
  {
    fields: [
      {
        type: 'number',
        ...CYLINDERS_FIELD,
        at: ['cylinders'],
        fallback: 'not given',
        set: ({ design }, value) =>
          value === undefined ? setFields(design, [[['engine', 'cylinders'], undefined]]) : setCylinders(design, value),
        optional: true,
      },
      {
        type: 'line',
        ...BANKS_FIELD,
        at: ['banks'],
        optional: true,
        write: (banks) => banksText(banks as number[][]),
        read: readBanksText,
      },
      {
        type: 'line',
        ...ORDER_FIELD,
        at: ['firingOrder'],
        optional: true,
        fallback: 'not given',
        write: (order) => orderText(order as number[]),
        read: readOrderText,
        take: ({ design }, order) => setFiringOrder(design, order as number[]),
      },
      size('Bore', 'bore', 'diameter of a cylinder'),
      size('Stroke', 'stroke', 'travel of the piston'),
      size('Rod', 'rod', 'connecting rod, centre to centre'),
      {
        type: 'number',
        quantity: 'plain',
        label: 'Compression',
        at: ['compressionRatio'],
        optional: true,
        fallback: 'not given',
        unit: ': 1',
        range: COMPRESSION,
        step: 0.1,
        meaning: 'greatest to least volume above the piston',
      },
      {
        type: 'line',
        label: 'Speeds',
        at: ['rpm'],
        optional: true,
        fallback: 'not given',
        meaning: 'rev/min, lowest and highest of interest: 1500 to 7200',
        write: (rpm) => (rpm as number[]).join(' to '),
        read: readSpeeds,
        take: ({ design }, rpm) => checked({ ...design, engine: { ...design.engine, rpm: rpm as [number, number] } }),
      },
    ],
  },
  valve('intakeValve', 'Intake valves'),
  valve('exhaustValve', 'Exhaust valves'),
];
