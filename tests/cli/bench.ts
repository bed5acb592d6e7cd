/** A folder to run commands in, and what they print: `run` in this process, for speed. */
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from '../../src/cli/run';

export type Answer = { readonly code: number; readonly out: string; readonly err: string };

export type Bench = {
  readonly folder: string;
  evenrun(...args: string[]): Promise<Answer>;
  /** Everything that lies in the folder, at any depth. */
  listing(): string[];
  clear(): void;
};

/** Holds GOOD, a header of three runners that holds every rule, and UNROUTED, the same without points. */
export function bench(): Bench {
  const folder = mkdtempSync(join(tmpdir(), 'evenrun-cli-'));
  cpSync('tests/layouts/known/c6-i3-3-1.evenrun.json', join(folder, GOOD));
  cpSync('tests/layouts/classic/c6-i3-3-1.evenrun.json', join(folder, UNROUTED));
  return {
    folder,
    async evenrun(...args) {
      const printed = { out: '', err: '' };
      const io = {
        out: (text: string) => {
          printed.out += text;
        },
        err: (text: string) => {
          printed.err += text;
        },
        cwd: folder,
      };
      return { code: await run(args, io), ...printed };
    },
    listing: () => readdirSync(folder, { recursive: true }).map(String).sort(),
    clear: () => rmSync(folder, { recursive: true, force: true }),
  };
}

export const GOOD = 'good.evenrun.json';
export const UNROUTED = 'unrouted.evenrun.json';
