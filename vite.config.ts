/** The app's bundle: relative addresses so that it runs from any folder, workers as modules, nothing fetched from elsewhere. */
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** As `scripts/serve.mjs` sends them: the page may share memory with its workers. */
const isolated = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};

/**
 * The kernel and what all speak of do nothing when they are loaded but lay out what they remember in: that goes with whoever
 * uses it, so that the page does not fetch what only a worker needs.
 */
const pure = ['geometry/', 'shared/'].map((folder) => fileURLToPath(new URL(folder, import.meta.url)));
const treeshake = {
  moduleSideEffects: (id: string) => !(id.endsWith('.ts') && pure.some((folder) => id.startsWith(folder))),
};

export default defineConfig({
  base: './',
  plugins: [react()],
  worker: { format: 'es', rolldownOptions: { treeshake } },
  build: { outDir: 'dist', target: 'es2022', chunkSizeWarningLimit: 1500, rolldownOptions: { treeshake } },
  server: { host: '127.0.0.1', headers: isolated },
  preview: { host: '127.0.0.1', headers: isolated },
});
