/**
 * verb-nurbs, loaded when first needed: nothing that the app's first load reaches imports it otherwise. Its main entry
 * expects a window, so the ES module is taken; on load it prints its version, which has no place among a command's output.
 * Its calls that end in `Async` never settle in a bundle and are not used.
 */
export type Verb = typeof import('verb-nurbs/build/js/verb.es.js')['default'];

let loading: Promise<Verb> | null = null;

export function loadVerb(): Promise<Verb> {
  loading ??= quietly(async () => (await import('verb-nurbs/build/js/verb.es.js')).default);
  return loading;
}

/** Holds back verb's own line alone: others may print while it loads. */
async function quietly<T>(work: () => Promise<T>): Promise<T> {
  // biome-ignore lint/style/noRestrictedGlobals: nothing is said here; what verb says is held back
  const screen = console;
  const { log } = screen;
  const filtered = (...said: unknown[]) => {
    if (!String(said[0]).startsWith('src/verb/')) log(...said);
  };
  screen.log = filtered;
  try {
    return await work();
  } finally {
    // Someone may have put their own in place meanwhile.
    if (screen.log === filtered) screen.log = log;
  }
}
