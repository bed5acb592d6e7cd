/**
 * Three kinds of test. `unit`: everything but the app and the browser, run with the view libraries replaced by a module
 * that throws when loaded, so that a kernel that came to need React or three fails here and not in a review.
 * `app`: the app's stores and tools, with the real libraries, still without a DOM. `browser`: a real Chromium, one at a time.
 */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const forbidden = fileURLToPath(new URL('./tests/stubs/forbidden.ts', import.meta.url));

export default defineConfig({
  test: {
    projects: [
      {
        resolve: {
          alias: [{ find: /^(react|react-dom|three|@react-three\/[^/]+|zustand)(\/.*)?$/, replacement: forbidden }],
        },
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/app/**', 'tests/browser/**'],
          environment: 'node',
          testTimeout: 20_000,
        },
      },
      {
        test: { name: 'app', include: ['tests/app/**/*.test.{ts,tsx}'], environment: 'node', testTimeout: 20_000 },
      },
      {
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          environment: 'node',
          fileParallelism: false,
          // Software rendering on a small machine: a frame can take a second.
          testTimeout: 120_000,
          hookTimeout: 180_000,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
