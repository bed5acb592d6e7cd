/**
 * All that keeping designs asks of a browser's database: values by key. Any call may fail, and a crash may cut any put
 * short; nothing above relies on more than that.
 */
export type Backend = {
  /** Undefined where there is none. */
  get(key: string): Promise<unknown>;
  put(key: string, value: unknown): Promise<void>;
  remove(key: string): Promise<void>;
  keys(prefix: string): Promise<string[]>;
};

/** For a browser that stores nothing: holds as long as the page does. */
export function memoryBackend(values = new Map<string, unknown>()): Backend {
  return {
    get: async (key) => values.get(key),
    put: async (key, value) => void values.set(key, value),
    remove: async (key) => void values.delete(key),
    keys: async (prefix) => [...values.keys()].filter((key) => key.startsWith(prefix)),
  };
}
