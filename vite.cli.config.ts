/** The installed command line: one file with everything in it, so that it starts fast and needs nothing beside it. */
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
