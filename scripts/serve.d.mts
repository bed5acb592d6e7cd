/** Types of serve.mjs. */
export function serve(folder: string, port?: number): Promise<{ url: string; close: () => Promise<void> }>;
