/** Benchmarks are measured as users run the code: bundled, not through the development loader. */
import { defineConfig } from 'vite';

export default defineConfig({
  publicDir: false,
  // Another kernel, measured beside ours, is taken as it is published.
  ssr: { noExternal: true, external: ['replicad', 'replicad-opencascadejs'] },
  build: {
    ssr: 'tests/bench/main.ts',
    outDir: 'dist/bench',
    target: 'node20',
    minify: false,
    rolldownOptions: { output: { entryFileNames: 'bench.js' } },
  },
});
