/**
 * The solver's WebAssembly as bytes, where a bundle carries it inside. From the sources, and in the app, it is a file of its own
 * that the solver finds beside itself: nothing is carried. The command line is one file: vite.cli.config.ts puts it here.
 */
export const carriedWasm = (): Uint8Array<ArrayBuffer> | undefined => undefined;
