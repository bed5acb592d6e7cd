/** What is kept of a design in this browser beside its text, and of a version of it. Written as JSON, read with care. */

/** An example that was never changed is dropped when it is left: it can be had again at any time. */
export type Origin = 'example' | 'file' | 'made';

export type KeptDesign = {
  readonly id: string;
  readonly fileName: string;
  /** When its text last changed, ms since the epoch. */
  readonly changed: number;
  readonly origin: Origin;
  /** Whether a file holds just this text. */
  readonly inFile: boolean;
  /** Names of the meshes kept beside it, by file name. */
  readonly meshes: Readonly<Record<string, string>>;
  /** The design document, to the byte. */
  readonly text: string;
};

export type KeptVersion = {
  readonly id: string;
  /** The design that it is a version of. */
  readonly of: string;
  readonly name: string;
  readonly at: number;
  readonly text: string;
};

type Kind = 'string' | 'number' | 'boolean' | 'object';

const DESIGN_FIELDS: Readonly<Record<keyof KeptDesign, Kind>> = {
  id: 'string',
  fileName: 'string',
  changed: 'number',
  origin: 'string',
  inFile: 'boolean',
  meshes: 'object',
  text: 'string',
};

const VERSION_FIELDS: Readonly<Record<keyof KeptVersion, Kind>> = {
  id: 'string',
  of: 'string',
  name: 'string',
  at: 'number',
  text: 'string',
};

/** Null for text that some other program, or a later version of this one, wrote. */
export const readKeptDesign = (text: string): KeptDesign | null => read<KeptDesign>(text, DESIGN_FIELDS);
export const readKeptVersion = (text: string): KeptVersion | null => read<KeptVersion>(text, VERSION_FIELDS);

function read<T>(text: string, fields: Readonly<Record<string, Kind>>): T | null {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof value !== 'object' || value === null) return null;
  const found = value as Record<string, unknown>;
  const fits = Object.entries(fields).every(([name, kind]) => typeof found[name] === kind && found[name] !== null);
  return fits ? (value as T) : null;
}
