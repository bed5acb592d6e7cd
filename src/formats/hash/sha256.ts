/** SHA-256 by Web Crypto, which browsers and Node 20 share. */

/** Lower-case hexadecimal, as `sha256sum` prints it. */
export async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const subtle = globalThis.crypto?.subtle;
  // Browsers keep it from pages that came over plain http from another machine.
  if (!subtle) throw new Error('Checksums need a page served over https or from this machine (http://localhost)');
  const digest = new Uint8Array(await subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
