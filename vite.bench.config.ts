/** Benchmarks are measured as users run the code: bundled, not through the development loader. */
import { defineConfig } from 'vite';

export default defineConfig({
  publicDir: false,
  ssr: { noExternal: true },
  build: {
    ssr: 'tests/bench/main.ts',
    outDir: 'dist/bench',
    target: 'node20',
    minify: false,
    rolldownOptions: { output: { entryFileNames: 'bench.js' } },
  },
});
