/** What the bench sheets are made from, and the words and steps that several of them share. */
import type { Header, ResolvedRunner } from '../../../geometry';
import { DEFAULT_MATERIAL } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { materialOf } from '../../../shared/stock/materials';
import { settingsOf } from '../../../shared/stock/workshop';
import { formatLength } from '../../../shared/units';
import type { Making } from '../making/report';
import { partsOf } from '../part';
import type { Steps } from './figures';

export type Bench = { readonly header: Header; readonly making: Making };

export const stepsOf = ({ header }: Bench, display: Display): Steps => {
  const { tape, dial } = settingsOf(header.design.workshop);
  return { display, tape, dial };
};

export const partOf = ({ header }: Pick<Bench, 'header'>, runner: string) =>
  partsOf(header).parts.find(({ id }) => id === runner);

export const materialName = (id: string = DEFAULT_MATERIAL): string => materialOf(id)?.name ?? id;

/** `42.40 mm × 2.00 mm, Stainless 304` */
export const tubeWords = ({ tube }: Pick<ResolvedRunner, 'tube'>, display: Display): string =>
  `${formatLength(tube.outsideDiameter, display)} × ${formatLength(tube.wall, display)}, ${materialName(tube.material)}`;

/** `flange f1`; what is called by its kind already is not called so twice. */
export const named = (kind: string, id: string): string => (id.toLowerCase().includes(kind) ? id : `${kind} ${id}`);

/** `port p1`; `collector pair 1-4` */
export const startName = ({ runner }: Pick<ResolvedRunner, 'runner'>): string =>
  'port' in runner.from ? named('port', runner.from.port) : named('collector', runner.from.merge);

export const endName = ({ runner: { to } }: ResolvedRunner): string =>
  `${named('collector', to.merge)}${to.inlet === undefined ? '' : `, inlet ${to.inlet}`}`;
