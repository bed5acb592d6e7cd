/**
 * Which room may import which, and what is wrong with a set of files. Reads import statements with TypeScript's own
 * scanner: static, dynamic and type-only alike.
 */
import { posix } from 'node:path';
import ts from 'typescript';

type Room = { readonly ours: readonly string[]; readonly forbidden: RegExp };

const VIEW = 'react|react-dom|three|@react-three/[^/]+|zustand';
const NODE = 'node:.+|fs|path|os|child_process';
const packages = (...kinds: string[]): RegExp => new RegExp(`^(${kinds.join('|')})(/.*)?$`);

const ROOMS: Readonly<Record<string, Room>> = {
  shared: { ours: ['shared'], forbidden: packages(VIEW, NODE) },
  geometry: { ours: ['shared', 'geometry'], forbidden: packages(VIEW, NODE, 'zod') },
  'src/formats': { ours: ['shared', 'geometry', 'src/formats'], forbidden: packages(VIEW, NODE) },
  'src/shop': { ours: ['shared', 'geometry', 'src/formats', 'src/shop'], forbidden: packages(VIEW, NODE) },
  'src/pulse': { ours: ['shared', 'geometry', 'src/formats', 'src/pulse'], forbidden: packages(VIEW, NODE) },
  'src/cli': {
    ours: ['shared', 'geometry', 'src/formats', 'src/shop', 'src/pulse', 'src/cli'],
    forbidden: packages(VIEW),
  },
  'src/app': {
    ours: ['shared', 'geometry', 'src/formats', 'src/shop', 'src/pulse', 'src/app'],
    forbidden: packages(NODE),
  },
};

const roomOf = (path: string): string | undefined => Object.keys(ROOMS).find((room) => path.startsWith(`${room}/`));

/** One line for each import that goes the wrong way. */
export function wrongImports(files: ReadonlyMap<string, string>): string[] {
  const wrong: string[] = [];
  for (const [path, text] of files) {
    if (!/\.tsx?$/.test(path)) continue;
    const name = roomOf(path);
    if (name === undefined) {
      if (path.startsWith('src/')) wrong.push(`${path} is in no room: add its folder to tests/architecture/imports.ts`);
      continue;
    }
    for (const { fileName } of ts.preProcessFile(text, true, true).importedFiles) {
      if (isWrong(path, ROOMS[name]!, fileName)) wrong.push(`${path} imports ${fileName}`);
    }
  }
  return wrong;
}

function isWrong(path: string, room: Room, specifier: string): boolean {
  if (!specifier.startsWith('.')) return room.forbidden.test(specifier);
  const target = posix.join(posix.dirname(path), specifier);
  return !room.ours.some((folder) => target === folder || target.startsWith(`${folder}/`));
}

/** What a pure function cannot mention: the screen, files, the clock, chance. Looked for outside comments and strings. */
const IMPURE =
  /\b(?:window|document|navigator|localStorage|sessionStorage|process|globalThis)\s*[.[]|\bMath\.random\b|\bDate\.now\b|\bnew Date\b|\bperformance\.|\bconsole\.|\bfetch\(|\bset(?:Timeout|Interval)\(|\brequire\(/;

/** One line for each pure file that is not. */
export function impurities(files: ReadonlyMap<string, string>): string[] {
  const found: string[] = [];
  for (const [path, text] of files) {
    const what = IMPURE.exec(withoutComments(text))?.[0];
    if (what !== undefined) found.push(`${path} uses ${what}`);
  }
  return found;
}

const withoutComments = (text: string): string =>
  text.replace(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|\/\*[\s\S]*?\*\/|\/\/[^\n]*/g, ' ');
