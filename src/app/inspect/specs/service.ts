/** Fields of a service point: what must stay reachable beside the header's own fasteners. */
import { LENGTH } from '../../../../shared/design/ranges';
import type { ServiceKind, ServicePoint } from '../../../../shared/design/types';
import type { Section } from './spec';

const KINDS = [
  { value: 'spark-plug', name: 'spark plug and boot' },
  { value: 'oil-filter', name: 'oil filter' },
  { value: 'starter', name: 'starter' },
  { value: 'dipstick', name: 'dipstick' },
  { value: 'bolt', name: 'bolt' },
] as const satisfies readonly { readonly value: ServiceKind; readonly name: string }[];

/** `Spark plug`, as on a button. */
export function serviceKindName(kind: ServiceKind): string {
  const name = kind === 'spark-plug' ? 'spark plug' : KINDS.find(({ value }) => value === kind)!.name;
  return name[0]!.toUpperCase() + name.slice(1);
}

const size = (at: keyof ServicePoint, label: string, meaning: string) =>
  ({
    type: 'number',
    quantity: 'length',
    label,
    at: [at],
    optional: true,
    fallback: 'by kind',
    range: LENGTH,
    meaning,
  }) as const;

export const serviceSections: readonly Section<ServicePoint>[] = [
  {
    fields: [
      { type: 'choice', label: 'What it is', at: ['kind'], choices: KINDS, meaning: 'gives the usual sizes' },
      { type: 'place', label: 'Position', at: ['position'], meaning: 'where the tool or the hand takes hold' },
      { type: 'direction', label: 'Comes off', at: ['direction'], meaning: 'the way it is drawn out' },
      size('acrossFlats', 'Across flats', 'of its hexagon'),
      size('diameter', 'Diameter', 'of what comes out'),
      size('length', 'Length', 'of what comes out, and so how far it is drawn'),
    ],
  },
];
