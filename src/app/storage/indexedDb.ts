/** The browser's own database as a backend. One table, no versions of it: what is inside tells its own version. */
import type { Backend } from './backend';

const TABLE = 'kept';
/** A browser that has not opened the database by then will not. */
const OPEN_MS = 5000;

/** @throws where the browser stores nothing: a private window, blocked by a setting, no room to begin with */
export async function openIndexedDb(name: string): Promise<Backend> {
  const database = await inTime(opened(name));
  const run = <T>(mode: IDBTransactionMode, work: (table: IDBObjectStore) => IDBRequest<T>): Promise<T> =>
    new Promise((resolve, reject) => {
      // Strict: on the disk, not in a queue, before we call it kept.
      const transaction = database.transaction(TABLE, mode, { durability: 'strict' });
      const request = work(transaction.objectStore(TABLE));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onabort = () => reject(transaction.error ?? request.error);
      transaction.onerror = () => reject(transaction.error ?? request.error);
    });
  return {
    get: (key) => run('readonly', (table) => table.get(key)),
    async put(key, value) {
      await run('readwrite', (table) => table.put(value, key));
    },
    async remove(key) {
      await run('readwrite', (table) => table.delete(key));
    },
    async keys(prefix) {
      const range = IDBKeyRange.bound(prefix, `${prefix}\uffff`);
      return (await run('readonly', (table) => table.getAllKeys(range))) as string[];
    },
  };
}

function opened(name: string): Promise<IDBDatabase> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(TABLE);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function inTime<T>(work: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => reject(new Error('the browser did not open its storage in time')), OPEN_MS);
    work.then(resolve, reject).finally(() => clearTimeout(late));
  });
}
