/** What the bench sheets are made from, and the words and steps that several of them share. */
import type { Header, ResolvedRunner } from '../../../geometry';
import { cross, DEFAULT_MATERIAL, DEGREES, dot, norm, reject, sub } from '../../../geometry';
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

/** From what the first turn is counted, where a builder can see it: ports have an arrow on the flange's drawing, collectors their inlets. */
export function upWords({ merges }: Header, { runner: { from } }: ResolvedRunner): string {
  if ('port' in from) return 'the port’s up (on the flange’s drawing)';
  const merge = merges.get(from.merge);
  const [first] = merge?.inlets ?? [];
  if (!merge || !first) return 'the collector’s up';
  const { direction, up } = merge.outlet;
  const out = reject(sub(first.position, merge.merge.position), direction);
  if (norm(out) === 0) return 'the collector’s up';
  // Clockwise for who looks with the flow.
  const inlet = Math.atan2(dot(out, cross(direction, up)), dot(out, up)) * DEGREES;
  const turn = Math.round(-inlet);
  if (turn === 0) return 'the collector’s up (where its inlet 1 is)';
  return `the collector’s up (${Math.abs(turn)}° ${turn > 0 ? 'clockwise' : 'counter-clockwise'} of its inlet 1, looking the same way)`;
}
