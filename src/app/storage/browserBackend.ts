/** The browser's database, opened at the first call; where it cannot be opened, memory, having said so once. */
import { type Backend, memoryBackend } from './backend';
import { openIndexedDb } from './indexedDb';

export function browserBackend(name: string, onDenied: (error: unknown) => void): Backend {
  let opening: Promise<Backend> | null = null;
  const backend = () => {
    opening ??= openIndexedDb(name).catch((error) => {
      onDenied(error);
      return memoryBackend();
    });
    return opening;
  };
  return {
    get: async (key) => (await backend()).get(key),
    put: async (key, value) => (await backend()).put(key, value),
    remove: async (key) => (await backend()).remove(key),
    keys: async (prefix) => (await backend()).keys(prefix),
  };
}
