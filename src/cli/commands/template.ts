/** `template saddle|mitre … -o FILE`: the wrap-around curve of a cut of one's own, as SVG or PDF, true size. */
import { resolve } from 'node:path';
import type { Display } from '../../../shared/design/types';
import { parseLength, parseNumber } from '../../../shared/units';
import { DEFAULT_PAPER_THICKNESS } from '../../shop/packet/packet';
import { DEFAULT_PAPER } from '../../shop/sheet/paper';
import { templateStrip } from '../../shop/templates/strip';
import { wishedPdf, wishedSvg } from '../../shop/templates/wishedFile';
import { type TemplateWish, type WishField, wishedTemplate, wishRefusals } from '../../shop/templates/wishes';
import { insistWritable, writeWhole } from '../files';
import { HOLDS, type Io, UnusableInput } from '../io';
import { type PaperArguments, paperOf } from '../paperArguments';

export type TemplateArguments = PaperArguments & {
  readonly output: string;
  readonly tube?: string;
  readonly onto?: string;
  readonly angle?: string;
  readonly offset?: string;
  readonly measuredOn?: string;
  readonly joints?: string;
  readonly radius?: string;
  readonly display?: string;
};

export async function templateCommand(kind: string, options: TemplateArguments, io: Io): Promise<number> {
  const display = displayOf(options.display);
  const wish = wishOf(kind, options, display);
  const [refusal] = wishRefusals(wish, display);
  if (refusal) throw new UnusableInput(`${FLAG[refusal.field]}: found ${refusal.found}; allowed: ${refusal.allowed}`);
  const { paper = DEFAULT_PAPER, ...more } = paperOf(options);
  const type = typeOf(options);
  const file = resolve(io.cwd, options.output);
  insistWritable(file);
  const strip = { paperThickness: DEFAULT_PAPER_THICKNESS, ...more, display };
  const made = wishedTemplate(wish, display);
  writeWhole(file, type === 'svg' ? wishedSvg(made, strip) : await wishedPdf(made, strip, paper));
  const { stations } = templateStrip(made.cut, strip);
  const fewer = more.stations && more.stations !== stations ? ['16 stations have no room on a tube this small: 8'] : [];
  const lines = [made.cut.title, ...made.says, ...made.cautions.map((c) => `Caution: ${c}`), ...fewer];
  io.out(`${lines.join('\n')}\n\nWritten to ${options.output}. Print at 100 %: the bar on it must measure 100.0 mm.\n`);
  return HOLDS;
}

const FLAG: Readonly<Record<WishField, string>> = {
  outsideDiameter: '--tube',
  wall: '--tube',
  onto: '--onto',
  angle: '--angle',
  offset: '--offset',
  joints: '--joints',
  radius: '--radius',
};

const SADDLE_ONLY = ['onto', 'offset'] as const;
const MITRE_ONLY = ['joints', 'radius'] as const;

function wishOf(kind: string, options: TemplateArguments, display: Display): TemplateWish {
  if (kind !== 'saddle' && kind !== 'mitre')
    throw new UnusableInput(`template: found "${kind}"; allowed: saddle, mitre`);
  const other = (kind === 'saddle' ? MITRE_ONLY : SADDLE_ONLY).find((key) => options[key] !== undefined);
  if (other) throw new UnusableInput(`--${other}: not of a ${kind}; leave it out`);
  const tube = { ...tubeOf(needed(options, 'tube', kind), display), measuredOn: sideOf(options.measuredOn) };
  if (kind === 'saddle')
    return {
      kind,
      ...tube,
      onto: length('--onto', needed(options, 'onto', kind), display),
      angle: number('--angle', options.angle ?? '90'),
      offset: length('--offset', options.offset ?? '0', display),
    };
  return {
    kind,
    ...tube,
    angle: number('--angle', needed(options, 'angle', kind)),
    joints: number('--joints', needed(options, 'joints', kind)),
    radius: length('--radius', needed(options, 'radius', kind), display),
  };
}

function needed(
  options: TemplateArguments,
  key: 'tube' | 'onto' | 'angle' | 'joints' | 'radius',
  kind: string,
): string {
  const text = options[key];
  if (text === undefined) throw new UnusableInput(`--${key} needed for a ${kind}; evenrun template --help says more`);
  return text;
}

/** Outside diameter and wall: `42.4x1.5`, `1 3/4 in x 0.065 in`. */
function tubeOf(text: string, display: Display): { outsideDiameter: number; wall: number } {
  const [outside, wall, ...more] = text.split(/[x×]/i);
  if (wall === undefined || more.length > 0)
    throw new UnusableInput(`--tube: found "${text}"; allowed: outside diameter and wall such as 42.4x1.5`);
  return { outsideDiameter: length('--tube', outside!, display), wall: length('--tube', wall, display) };
}

function length(option: string, text: string, display: Display): number {
  const answer = parseLength(text, display);
  if (!answer.ok) throw new UnusableInput(`${option}: found "${text}": ${answer.problem}`);
  return answer.mm;
}

function number(option: string, text: string): number {
  const answer = parseNumber(text);
  if (!answer.ok) throw new UnusableInput(`${option}: found "${text}": ${answer.problem}`);
  return answer.value;
}

function displayOf(text = 'mm'): Display {
  if (text === 'mm' || text === 'in') return text;
  throw new UnusableInput(`--display: found "${text}"; allowed: mm, in`);
}

function sideOf(text = 'outside'): 'outside' | 'bore' {
  if (text === 'outside' || text === 'bore') return text;
  throw new UnusableInput(`--measured-on: found "${text}"; allowed: outside, bore`);
}

function typeOf({ output, paper }: TemplateArguments): 'svg' | 'pdf' {
  const type = /\.(svg|pdf)$/i.exec(output)?.[1]?.toLowerCase();
  if (type !== 'svg' && type !== 'pdf')
    throw new UnusableInput(`--output: found "${output}"; allowed: a name that ends in .svg or .pdf`);
  if (type === 'svg' && paper !== undefined)
    throw new UnusableInput('--paper: an SVG is one sheet as large as it needs; leave it out, or write a .pdf');
  return type;
}
