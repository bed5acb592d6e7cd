/** The view libraries are out of the kernel's reach: shown by loading the kernel, and by loading what must not load. */
import { expect, test } from 'vitest';

test('the kernel loads with React, three and zustand out of reach', async () => {
  const kernel = await import('../../geometry/index');
  expect(Object.keys(kernel).length).toBeGreaterThan(10);
});

test.each(['react', 'three', '@react-three/fiber', 'react-dom/client', 'zustand'])(
  '%s is out of reach here',
  async (name) => {
    await expect(import(/* @vite-ignore */ name)).rejects.toThrow(/must not load/);
  },
);
