/** `mirror DESIGN -o OUT`: the design with a bank's mirror image added, then every rule measured. */
import { resolve } from 'node:path';
import { check, engineWords, type MirrorOptions, mirrorBank } from '../../../geometry';
import { DesignError } from '../../../shared/design/refusal';
import type { Design } from '../../../shared/design/types';
import { writeDesign } from '../../../shared/design/write';
import { numberArgument, pairsArgument, vectorArgument } from '../arguments';
import { insistWritable, writeWhole } from '../files';
import { FAILS, HOLDS, type Io, UnusableInput } from '../io';
import { printReport } from '../print/report';
import { loadDesign } from '../readDesign';

export type MirrorArguments = {
  readonly output: string;
  readonly bank?: string;
  readonly cylinders?: string;
  readonly point?: string;
  readonly normal?: string;
  readonly names?: string;
  readonly surroundings?: string;
  readonly service?: string;
  readonly json?: boolean;
};

export function mirrorCommand(path: string, options: MirrorArguments, io: Io): number {
  const output = resolve(io.cwd, options.output);
  const asked = optionsOf(options);
  insistWritable(output);
  const { design, meshes } = loadDesign(path, io);
  const mirrored = refusing(path, () => mirrorBank(design, asked));
  const report = check(mirrored, meshes);
  const grown = engineWords(design, mirrored);
  writeWhole(output, writeDesign(mirrored));
  io.out(
    options.json
      ? `${JSON.stringify({ ...report, ...(grown ? { notes: [grown] } : {}), output: options.output }, null, 2)}\n`
      : `${printReport(mirrored, report)}\n${grown ? `To know\n  ${grown}\n\n` : ''}Mirrored: written to ${options.output}\n`,
  );
  return report.ok ? HOLDS : FAILS;
}

function optionsOf({ bank, cylinders, point, normal, names, surroundings, service }: MirrorArguments): MirrorOptions {
  const opposite = cylinders === undefined ? undefined : pairsArgument('--cylinders', cylinders);
  const axis = normal === undefined ? ([0, 1, 0] as const) : vectorArgument('--normal', normal);
  if (Math.hypot(...axis) === 0) throw new UnusableInput('--normal: found 0,0,0; allowed: a vector with a direction');
  return {
    ...(bank === undefined ? {} : { bank: numberArgument('--bank', bank) }),
    ...(opposite
      ? {
          cylinders: new Map(
            opposite.map(([a, b]) => [numberArgument('--cylinders', a), numberArgument('--cylinders', b)]),
          ),
        }
      : {}),
    plane: { point: point === undefined ? [0, 0, 0] : vectorArgument('--point', point), normal: axis },
    ...(names === undefined ? {} : { names: new Map(pairsArgument('--names', names)) }),
    ...(surroundings === undefined ? {} : { surroundings: idsIn(surroundings) }),
    ...(service === undefined ? {} : { service: idsIn(service) }),
  };
}

const idsIn = (list: string): string[] => list.split(',').map((id) => id.trim());

function refusing(path: string, act: () => Design): Design {
  try {
    return act();
  } catch (error) {
    if (error instanceof DesignError) throw new UnusableInput(`${path}: ${error.message}`);
    throw error;
  }
}
