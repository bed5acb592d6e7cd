/**
 * HiGHS, compiled to WebAssembly: linear programs and those with whole numbers. Loaded when it is first needed, once: it has
 * three megabytes. Two calls are all that is used of it. Costs and amounts in the caller's units.
 */
import type { Highs } from 'highs';
import { carriedWasm } from './carried';

let loaded: Promise<Highs> | undefined;

export function solver(): Promise<Highs> {
  loaded ??= load().catch((error: unknown) => {
    loaded = undefined;
    throw error;
  });
  return loaded;
}

async function load(): Promise<Highs> {
  const { default: start } = await import('highs');
  const wasmBinary = carriedWasm();
  return start(wasmBinary && { wasmBinary });
}
