/** The installed command line: one file that starts fast, and beside it, under `assets`, what only some commands load. */
import { defineConfig } from 'vite';

export default defineConfig({
  publicDir: false,
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
