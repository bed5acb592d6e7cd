/**
 * `size DESIGN | --bore … --stroke … --cylinders … --rpm …`: starting lengths and diameters from textbook formulas. What is
 * given by option outranks the design; lengths take any unit, `3 1/2 in` and `2*42.4` among them.
 */
import { DesignError } from '../../../shared/design/refusal';
import type { Display } from '../../../shared/design/types';
import { ARRANGEMENTS, type Arrangement } from '../../../shared/engine/form';
import { sizingFromDesign } from '../../../shared/engine/sizing/fromDesign';
import { type SizingInput, startingSizes } from '../../../shared/engine/sizing/startingSizes';
import { lengthParts, parseLength, parseNumber } from '../../../shared/units';
import { HOLDS, type Io, UnusableInput } from '../io';
import { printSizes } from '../print/sizes';
import { loadDesign } from '../readDesign';

/** As commander hands them over. */
export type SizeOptions = Readonly<Partial<Record<string, string | boolean>>>;

type Kind = 'length' | 'number';
/** Option → what it feeds, what kind of number it is, and its line in the help. */
export const SIZE_OPTIONS: readonly (readonly [flag: string, key: keyof SizingInput, kind: Kind, help: string])[] = [
  ['--bore <length>', 'bore', 'length', 'diameter of a cylinder'],
  ['--stroke <length>', 'stroke', 'length', 'how far a piston travels'],
  ['--cylinders <n>', 'cylinders', 'number', 'how many end in one collector'],
  ['--rpm <n>', 'rpm', 'number', 'the speed to tune for'],
  ['--top-rpm <n>', 'topRpm', 'number', 'the highest speed used'],
  ['--exhaust-opens <deg>', 'exhaustOpens', 'number', 'crank degrees from top dead centre, exhaust stroke: -240'],
  ['--exhaust-closes <deg>', 'exhaustCloses', 'number', 'likewise: 20'],
  ['--intake-opens <deg>', 'intakeOpens', 'number', 'likewise: -20'],
  ['--gas-temperature <c>', 'gasTemperature', 'number', 'mean in the primary, °C'],
  ['--return-after <deg>', 'returnAfter', 'number', 'crank degrees from pulse to wanted return'],
  ['--port <length>', 'portDiameter', 'length', 'port, as a round hole of its area'],
  ['--primary-bore <length>', 'primaryBore', 'length', 'inside diameter of the primary, where it is chosen'],
  ['--wall <length>', 'wall', 'length', 'wall of the tubes'],
];

export function sizeCommand(path: string | undefined, options: SizeOptions, io: Io): number {
  const loaded = path === undefined ? null : loadDesign(path, io).design;
  const display = displayOf(options, loaded?.display);
  const known = loaded ? sizingFromDesign(loaded) : { input: {}, collector: null };
  const input = { ...known.input, ...fromOptions(options, display) };
  insist(input, path);
  const result = naming(() => startingSizes(input));
  if (options.json) io.out(`${JSON.stringify({ input, collector: known.collector, ...result }, null, 2)}\n`);
  else io.out(printSizes(result, subjectOf(input, known.collector, display), display));
  return HOLDS;
}

function fromOptions(options: SizeOptions, display: Display): Partial<SizingInput> {
  const numbers = SIZE_OPTIONS.flatMap(([flag, key, kind]) => {
    const text = options[camel(flag)];
    if (typeof text !== 'string') return [];
    const answer = kind === 'length' ? parseLength(text, display) : parseNumber(text);
    if (!answer.ok) throw new UnusableInput(`${flag.split(' ')[0]}: found "${text}": ${answer.problem}`);
    return [[key, 'mm' in answer ? answer.mm : answer.value]];
  });
  const { arrangement } = options;
  if (arrangement !== undefined && !ARRANGEMENTS.includes(arrangement as Arrangement))
    throw new UnusableInput(`--arrangement: found "${arrangement}"; allowed: ${ARRANGEMENTS.join(', ')}`);
  return {
    ...Object.fromEntries(numbers),
    ...(arrangement !== undefined && { arrangement: arrangement as Arrangement }),
  };
}

function displayOf({ unit }: SizeOptions, fallback: Display = 'mm'): Display {
  if (unit === undefined) return fallback;
  if (unit === 'mm' || unit === 'in') return unit;
  throw new UnusableInput(`--unit: found "${unit}"; allowed: mm, in`);
}

const NEEDED = ['bore', 'stroke', 'cylinders', 'rpm'] as const;

function insist(input: Partial<SizingInput>, path: string | undefined): asserts input is SizingInput {
  const missing = NEEDED.filter((key) => input[key] === undefined);
  if (missing.length === 0) return;
  const where = path === undefined ? 'no design is given' : `${path} does not say it under engine`;
  throw new UnusableInput(`${missing.map((key) => `--${key}`).join(', ')} needed: ${where}`);
}

/** Refusals name inputs as the command line spells them. */
function naming<T>(act: () => T): T {
  try {
    return act();
  } catch (error) {
    if (!(error instanceof DesignError)) throw error;
    const flag = SIZE_OPTIONS.find(([, key]) => key === error.path)?.[0].split(' ')[0] ?? `--${error.path}`;
    const more = error.problems.length > 1 ? ` (and ${error.problems.length - 1} more)` : '';
    throw new UnusableInput(`${flag}: found ${error.found}; allowed: ${error.allowed}${more}`);
  }
}

function subjectOf({ cylinders, bore, stroke, rpm }: SizingInput, collector: string | null, display: Display): string {
  const length = (mm: number) => lengthParts(mm, display, display === 'in' ? 3 : 1).number;
  const into = collector === null ? '' : ` into ${collector}`;
  const engine = `${cylinders} ${cylinders === 1 ? 'cylinder' : 'cylinders'}${into}, ${length(bore)} × ${length(stroke)} ${display}`;
  return `${engine}, tuned for ${rpm} rpm`;
}

const camel = (flag: string): string =>
  flag
    .split(' ')[0]!
    .slice(2)
    .replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
