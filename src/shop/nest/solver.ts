/**
 * HiGHS, compiled to WebAssembly: linear programs and those with whole numbers. Loaded when it is first needed, once: it has
 * three megabytes. Two calls are all that is used of it. Costs and amounts in the caller's units.
 */
import type { Highs, InitOptions } from 'highs';
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
  const carried = carriedWasm();
  return carried ? start(carrying(await WebAssembly.compile(carried))) : start();
}

/** The package's own options for it, `wasmBinary` and `wasmModule`, are in its types and not in what it runs; this hook is. */
function carrying(module: WebAssembly.Module): InitOptions {
  const instantiateWasm = (imports: WebAssembly.Imports, receive: (instance: WebAssembly.Instance) => void) => {
    void WebAssembly.instantiate(module, imports).then(receive);
    return {};
  };
  return { instantiateWasm } as InitOptions;
}
