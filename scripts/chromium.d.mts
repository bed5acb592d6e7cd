/** Types of chromium.mjs. */
export function findChromium(): string | null;
export const CHROMIUM_REMEDY: string;
