/** The app's bundle: relative addresses so that it runs from any folder, workers as modules, nothing fetched from elsewhere. */
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** As `scripts/serve.mjs` sends them: the page may share memory with its workers. */
const isolated = {
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Embedder-Policy': 'require-corp',
};

export default defineConfig({
  base: './',
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: 'dist',
    target: 'es2022',
    chunkSizeWarningLimit: 1500,
    rolldownOptions: {
      // The kernel does nothing by being loaded, so what only a part loaded later asks of its table of contents goes there.
      treeshake: { moduleSideEffects: (id) => !/\/(geometry|shared)\/[^?]*\.ts$/.test(id) },
    },
  },
  server: { host: '127.0.0.1', headers: isolated },
  preview: { host: '127.0.0.1', headers: isolated },
});
