/**
 * What an inspector shows of a thing, as data: each field's place in the document, its words, range and default. One list
 * a kind, read alike for one thing and for several picked at once. No React.
 */
import type { Header } from '../../../../geometry';
import type { Edited, Segments, Thing } from '../../../../shared/design/edit';
import type { Range } from '../../../../shared/design/ranges';
import type { Design, Display } from '../../../../shared/design/types';
import type { Vec3 } from '../../../../shared/vec3';
import type { Choice } from '../ChoiceField';
import type { Quantity } from '../fields/quantity';

/** The thing being asked about, with all that it depends on. */
export type Context<T> = {
  readonly design: Design;
  readonly header: Header;
  readonly thing: Thing;
  /** The thing as the document has it. */
  readonly entry: T;
  readonly display: Display;
};

/** A value, or how to find it for one thing. */
export type From<T, V> = V | ((context: Context<T>) => V);

export type Reading<V> = { readonly ok: true; readonly value: V } | { readonly ok: false; readonly problem: string };

type Common<T, V> = {
  readonly label: string;
  /** From the thing down; also what the field is known by. */
  readonly at: Segments;
  readonly meaning?: string;
  /** Whose field it is, where that is not the thing asked about: an entry of one of its lists. */
  readonly whose?: string;
  /** May be absent from the document: the field can be emptied, back to the default. */
  readonly optional?: true;
  /** What an emptied field is set to, where not simply taken away. */
  readonly empty?: null;
  /** Shown for things for which this holds. */
  readonly when?: (context: Context<T>) => boolean;
  /** In place of setting the one field. `undefined`: emptied. */
  readonly set?: (context: Context<T>, value: V | undefined) => Edited;
};

/** Values offered beside a number that can also be typed, such as stock sizes. */
export type Offer = { readonly value: number; readonly name: string };

export type NumberSpec<T> = Common<T, number> & {
  readonly type: 'number';
  readonly quantity: Quantity;
  readonly range: From<T, Range>;
  readonly fallback?: From<T, number | string | undefined>;
  readonly unit?: string;
  readonly step?: number;
  readonly offers?: { readonly name: string; readonly of: From<T, readonly Offer[]> };
};

export type VectorSpec<T> = Common<T, Vec3> & {
  readonly type: 'place' | 'direction';
  readonly fallback?: From<T, Vec3>;
};

export type ChoiceSpec<T> = Common<T, string> & {
  readonly type: 'choice';
  readonly choices: From<T, readonly Choice[]>;
  readonly fallback?: From<T, string>;
  /** The choice in force, where it is no plain field. */
  readonly get?: (context: Context<T>) => string | null;
};

export type TextSpec<T> = Common<T, string> & {
  readonly type: 'text';
  readonly fallback?: From<T, string>;
  readonly offers?: readonly string[];
};

/** A value of several parts written on one line: a firing order, a list of radii. */
export type LineSpec<T> = Common<T, never> & {
  readonly type: 'line';
  readonly fallback?: From<T, string>;
  write(value: unknown, display: Display): string;
  read(text: string, display: Display): Reading<unknown>;
  readonly take?: (context: Context<T>, value: unknown) => Edited;
};

export type FieldSpec<T> = NumberSpec<T> | VectorSpec<T> | ChoiceSpec<T> | TextSpec<T> | LineSpec<T>;

export type Section<T = unknown> = {
  readonly title?: string;
  /** Another kind's entry of the same name: a tube's tooling. */
  readonly as?: 'tooling';
  readonly fields: readonly FieldSpec<T>[];
};

export function find<T, V>(from: From<T, V>, context: Context<T>): V {
  return typeof from === 'function' ? (from as (context: Context<T>) => V)(context) : from;
}
