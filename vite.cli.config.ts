/** The installed command line: one file with everything in it, so that it starts fast and needs nothing beside it. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { brotliCompressSync } from 'node:zlib';
import { defineConfig, type Plugin } from 'vite';

/** The solver's WebAssembly goes inside too, as text that is unpacked when a plan is first asked for. */
const carryWasm: Plugin = {
  name: 'carry-wasm',
  load(id) {
    if (!id.endsWith('/src/shop/nest/carried.ts')) return;
    const packed = brotliCompressSync(readFileSync(createRequire(import.meta.url).resolve('highs/runtime')));
    return `import { brotliDecompressSync } from 'node:zlib';
export const carriedWasm = () => new Uint8Array(brotliDecompressSync(Buffer.from('${packed.toString('base64')}', 'base64')));`;
  },
};

export default defineConfig({
  publicDir: false,
  plugins: [carryWasm],
  ssr: { noExternal: true },
  build: {
    ssr: 'src/cli/main.ts',
    outDir: 'dist/cli',
    target: 'node20',
    minify: false,
    rolldownOptions: {
      // What is imported only when needed is in the same file too, and run only then.
      output: { entryFileNames: 'evenrun.js', banner: '#!/usr/bin/env node', codeSplitting: false },
    },
  },
});
