/**
 * Keys as written in an action (`Mod+Shift+Z`, `F`, `?`) against keys as pressed. Mod is Ctrl or, on a Mac, Command. A sign
 * that needs Shift on one keyboard and not on another is named by itself, so Shift counts for letters and named keys only.
 */

export type Chord = {
  readonly key: string;
  readonly mod: boolean;
  readonly shift: boolean;
  readonly alt: boolean;
};

export type Pressed = {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
};

/** @throws RangeError for what is not a chord, so that a slip of the pen fails the tests */
export function parseKeys(text: string): Chord {
  const parts = text.split(/\+(?=.)/);
  const key = parts.pop() ?? '';
  for (const part of parts)
    if (!['Mod', 'Shift', 'Alt'].includes(part)) throw new RangeError(`${text}: ${part} is not Mod, Shift or Alt`);
  if (key === '') throw new RangeError(`${text} names no key`);
  return {
    key: key.toLowerCase(),
    mod: parts.includes('Mod'),
    shift: parts.includes('Shift'),
    alt: parts.includes('Alt'),
  };
}

/** Letters, and keys with a name such as Enter: signs and digits are made with Shift on some keyboards. */
const shiftCounts = (key: string): boolean => /^[a-z]$/.test(key) || key.length > 1;

export function matches(chord: Chord, e: Pressed): boolean {
  const key = e.key.toLowerCase();
  if (key !== chord.key || (e.ctrlKey || e.metaKey) !== chord.mod) return false;
  if (!shiftCounts(key)) return true;
  return e.shiftKey === chord.shift && e.altKey === chord.alt;
}

/** Two ways of writing one chord compare equal. */
export const sameKeys = (text: string): string => {
  const { key, mod, shift, alt } = parseKeys(text);
  return [mod && 'Mod', shiftCounts(key) && shift && 'Shift', shiftCounts(key) && alt && 'Alt', key]
    .filter(Boolean)
    .join('+');
};

const isMac = (): boolean => typeof navigator !== 'undefined' && /Mac|iPhone|iPad/.test(navigator.platform);

const SIGNS: Readonly<Record<string, string>> = { arrowleft: '←', arrowright: '→', arrowup: '↑', arrowdown: '↓' };

/** The caps to draw, such as Ctrl, Shift, Z. */
export function keyCaps(text: string, mac = isMac()): string[] {
  const { key, mod, shift, alt } = parseKeys(text);
  const caps = [
    mod ? (mac ? '⌘' : 'Ctrl') : '',
    alt ? (mac ? '⌥' : 'Alt') : '',
    shift ? 'Shift' : '',
    SIGNS[key] ?? (key.length > 1 ? key[0]!.toUpperCase() + key.slice(1) : key.toUpperCase()),
  ];
  return caps.filter((cap) => cap !== '');
}

/** As `aria-keyshortcuts` wants them. */
export const ariaKeys = (keys: readonly string[] = []): string =>
  keys.map((k) => k.replace('Mod', isMac() ? 'Meta' : 'Control')).join(' ');

/** For a tooltip: `Undo (Ctrl Z)`. */
export const withKeys = (name: string, keys: readonly string[] | undefined): string =>
  keys?.[0] ? `${name} (${keyCaps(keys[0]).join(' ')})` : name;
