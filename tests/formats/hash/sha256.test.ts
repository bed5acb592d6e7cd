import { expect, test } from 'vitest';
import { sha256 } from '../../../src/formats/hash/sha256';

// The one-block example of FIPS 180-4's companion document, and of nothing at all (from memory).
test.each([
  ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
  ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
])('SHA-256 of "%s"', async (text, expected) => {
  expect(await sha256(new TextEncoder().encode(text))).toBe(expected);
});
