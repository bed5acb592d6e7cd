/**
 * Fields over things: the value that several things share, and one edit that sets it on all of them. No React.
 */
import { type Header, withAxis } from '../../../geometry';
import {
  type Edited,
  placeOfThing,
  type Segments,
  segmentsOf,
  setFields,
  type Thing,
} from '../../../shared/design/edit';
import { valueAt } from '../../../shared/design/ids';
import type { Range } from '../../../shared/design/ranges';
import type { Design } from '../../../shared/design/types';
import type { Vec3 } from '../../../shared/vec3';
import { sayQuantity } from './fields/quantity';
import { nameOf } from './picked';
import { type ChoiceSpec, type Context, type FieldSpec, find } from './specs/spec';

export type AnyContext = Context<never>;
export type AnySpec = FieldSpec<never>;

export function contextsOf(design: Design, header: Header, things: readonly Thing[]): AnyContext[] {
  return things.flatMap((thing) => {
    const where = segmentsOf(design, thing);
    return where
      ? [{ design, header, thing, entry: valueAt(design, where) as never, display: design.display ?? 'mm' }]
      : [];
  });
}

/** `one`: all have it alike; `differ`; `none`: none of them has it. */
export type Shared<V> =
  | { readonly kind: 'one'; readonly value: V }
  | { readonly kind: 'differ' }
  | { readonly kind: 'none' };

export function sharedOf<V>(values: readonly (V | null | undefined)[]): Shared<V> {
  const [first] = values;
  const text = JSON.stringify(first);
  if (!values.every((value) => JSON.stringify(value) === text)) return { kind: 'differ' };
  return first === undefined || first === null ? { kind: 'none' } : { kind: 'one', value: first };
}

export const fieldOf = ({ entry }: AnyContext, at: Segments): unknown => valueAt(entry, at);

/** Shown where it applies to each of the things. */
export const applies = (spec: AnySpec, contexts: readonly AnyContext[]): boolean =>
  contexts.every((context) => spec.when?.(context) ?? true);

/** What all of the things allow. */
export function rangeOver(range: (context: AnyContext) => Range, contexts: readonly AnyContext[]): Range {
  const [first, ...others] = contexts.map(range);
  return others.reduce<Range>((so, next) => {
    const low = next.least > so.least ? next : so;
    const high = next.most < so.most ? next : so;
    return {
      least: low.least,
      most: high.most,
      ...(low.above && { above: true as const }),
      ...(high.below && { below: true as const }),
      ...(so.whole && { whole: true as const }),
    };
  }, first!);
}

/** The edit that gives all of the things a value; `undefined` takes it away. */
export function setOn(design: Design, header: Header, things: readonly Thing[], spec: AnySpec, value: unknown): Edited {
  const set = (spec.type === 'line' && value !== undefined ? spec.take : spec.set) as
    | ((context: AnyContext, value: never) => Edited)
    | undefined;
  if (!set) {
    const put = value === undefined && spec.empty === null ? null : value;
    return setFields(
      design,
      things.map((thing) => [[...segmentsOf(design, thing)!, ...spec.at], put]),
    );
  }
  return things.reduce<Edited>(
    (so, thing) => (so.ok ? set(contextsOf(so.design, header, [thing])[0]!, value as never) : so),
    { ok: true, design },
  );
}

/** One axis of a vector; where there was none yet, of its default. */
export function setAxis(
  design: Design,
  header: Header,
  things: readonly Thing[],
  spec: AnySpec & { type: 'place' | 'direction' },
  axis: 0 | 1 | 2,
  value: number,
): Edited {
  return setFields(
    design,
    contextsOf(design, header, things).map((context) => {
      const before = (fieldOf(context, spec.at) ??
        (spec.fallback && find(spec.fallback, context)) ?? [0, 0, 0]) as Vec3;
      return [[...segmentsOf(design, context.thing)!, ...spec.at], withAxis(before, axis, value)];
    }),
  );
}

/** Names the step in history: `Outside diameter of tube primary: 42.4 mm → 44.5 mm`. */
export function labelOf(spec: AnySpec, contexts: readonly AnyContext[], value: unknown, axis?: number): string {
  const things = contexts.map(({ thing }) => thing);
  const [context] = contexts;
  const part = axis === undefined ? '' : ` ${'XYZ'[axis]}`;
  const head = `${spec.label}${part} of ${spec.whose ?? nameOf(things)}`;
  const before = sharedOf(
    contexts.map((c) => (axis === undefined ? fieldOf(c, spec.at) : (fieldOf(c, spec.at) as Vec3 | undefined)?.[axis])),
  );
  const after = say(spec, context!, value);
  const from = before.kind === 'one' && things.length === 1 ? `${say(spec, context!, before.value)} → ` : '';
  return `${head}: ${from}${after}`;
}

function say(spec: AnySpec, context: AnyContext, value: unknown): string {
  if (value === undefined || value === null) return 'default';
  if (spec.type === 'number' && typeof value === 'number') return sayQuantity(value, spec.quantity, context.display);
  if (spec.type === 'place' && typeof value === 'number') return sayQuantity(value, 'length', context.display);
  if (spec.type === 'choice') return choiceName(spec, context, String(value));
  if (spec.type === 'line') return spec.write(value, context.display);
  return typeof value === 'object' ? 'set' : String(value);
}

const choiceName = (spec: ChoiceSpec<never>, context: AnyContext, value: string): string =>
  find(spec.choices, context).find((choice) => choice.value === value)?.name ?? value;

/** The path of the field in the document, for one thing. */
export const pathOfField = (things: readonly Thing[], spec: AnySpec): string | undefined =>
  things.length === 1 ? [placeOfThing(things[0]!), ...spec.at].filter((s) => s !== 'document').join('/') : undefined;
