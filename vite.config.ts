/** The app's bundle: relative addresses so that it runs from any folder, workers as modules, nothing fetched from elsewhere. */
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

export default defineConfig({
  base: './',
  plugins: [react()],
  worker: { format: 'es' },
  build: { outDir: 'dist', target: 'es2022', chunkSizeWarningLimit: 1500 },
  server: { host: '127.0.0.1' },
  preview: { host: '127.0.0.1' },
});
