/**
 * One text kept in two copies, written in turn: the newest whole one is never written over, so that a crash at any
 * moment leaves it or its successor. Which is newest is told by the copies themselves (number and checksum); a pointer
 * beside them would be one more thing to be torn.
 */
import type { Backend } from './backend';
import { type Sealed, seal, unseal } from './seal';

const PLACES = ['a', 'b'] as const;

type Copy = Sealed & { readonly key: string };

/** Whole copies, the newest first. */
async function copies(backend: Backend, name: string): Promise<Copy[]> {
  const read = await Promise.all(
    PLACES.map(async (place): Promise<Copy[]> => {
      const key = `${name}/${place}`;
      const sealed = await unseal(await backend.get(key));
      return sealed ? [{ ...sealed, key }] : [];
    }),
  );
  return read.flat().sort((a, b) => b.number - a.number);
}

/** The newest whole text that can be used, or null. */
export async function readNewest<T>(
  backend: Backend,
  name: string,
  use: (text: string) => T | null,
): Promise<T | null> {
  for (const { text } of await copies(backend, name)) {
    const used = use(text);
    if (used !== null) return used;
  }
  return null;
}

/** Resolves once the new text lies there and has been read back whole; until then the old one does. */
export async function writeNext(backend: Backend, name: string, text: string): Promise<void> {
  const [newest] = await copies(backend, name);
  const key = PLACES.map((place) => `${name}/${place}`).find((k) => k !== newest?.key)!;
  const number = (newest?.number ?? 0) + 1;
  await backend.put(key, await seal({ number, text }));
  const back = await unseal(await backend.get(key));
  if (back?.number !== number || back.text !== text) throw new Error('what was written reads back otherwise');
}

/** The older copy goes first: cut short, this leaves the newest and not the one before it. */
export async function removeCopies(backend: Backend, name: string): Promise<void> {
  const whole = (await copies(backend, name)).map((c) => c.key);
  const torn = PLACES.map((place) => `${name}/${place}`).filter((key) => !whole.includes(key));
  for (const key of [...torn, ...whole.reverse()]) await backend.remove(key);
}
