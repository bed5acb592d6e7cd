/**
 * Arguments → command → exit code. Everything wrong with the input, whoever notices it, comes out here as one line on
 * standard error and exit code 2; only a fault of ours keeps its stack, for the report.
 */
import { Command, CommanderError } from 'commander';
import { ARRANGEMENTS } from '../../shared/engine/form';
import { SURROUNDING_KINDS } from '../../shared/stock/surroundingKinds';
import { VERSION } from '../../shared/version';
import { balanceCommand } from './commands/balance';
import { checkCommand } from './commands/check';
import { compareCommand } from './commands/compare';
import { type MakeArguments, makeCommand } from './commands/make';
import { type MirrorArguments, mirrorCommand } from './commands/mirror';
import { type NestArguments, nestCommand } from './commands/nest';
import { type NewArguments, NUMBERS, newCommand, optionName } from './commands/new';
import { type OutlineArguments, outlineCommand } from './commands/outline';
import { pulseCommand } from './commands/pulse';
import { type RouteArguments, routeCommand } from './commands/route';
import { type ScanArguments, scanCommand } from './commands/scan';
import { type ShopArguments, shopCommand } from './commands/shop';
import { SIZE_OPTIONS, type SizeOptions, sizeCommand } from './commands/size';
import { type TemplateArguments, templateCommand } from './commands/template';
import { HOLDS, type Io, oneLine, UNUSABLE, UnusableInput } from './io';
import type { PulseArguments } from './pulse/options';

const KINDS = SURROUNDING_KINDS.map((k) => k.kind).join(', ');

/** @param args without the interpreter and the script */
export async function run(args: readonly string[], io: Io): Promise<number> {
  let code = HOLDS;
  const program = programOf(io, (result) => {
    code = result;
  });
  try {
    await program.parseAsync([...args], { from: 'user' });
    return code;
  } catch (error) {
    if (error instanceof CommanderError && error.exitCode === 0) return HOLDS;
    io.err(`evenrun: ${oneLine(messageOf(error, program, args[0]))}\n`);
    return UNUSABLE;
  }
}

/** Of an option that is given several times. */
const also = (text: string, before: readonly string[] = []): string[] => [...before, text];

function messageOf(error: unknown, program: Command, asked = ''): string {
  if (error instanceof UnusableInput) return error.message;
  if (error instanceof CommanderError) {
    const of = program.commands.some((command) => command.name() === asked) ? ` ${asked}` : '';
    return `${error.message.replace(/^error: /, '')}; evenrun${of} --help says what can be asked`;
  }
  return `a fault of the program, not of the design; please report it: ${error instanceof Error ? error.message : error}`;
}

function programOf(io: Io, done: (code: number) => void): Command {
  const program = new Command('evenrun')
    .description('Equal-length exhaust headers: from ports to a bend table.')
    .version(VERSION, '--version', 'print the version')
    .helpOption('-h, --help', 'say what can be asked')
    .showSuggestionAfterError(false)
    .exitOverride()
    .configureOutput({ writeOut: (text) => io.out(text), writeErr: () => {} })
    .addHelpText('after', '\nExit codes: 0 every rule holds, 1 something fails, 2 the input cannot be used.');

  program
    .command('check <design>')
    .description('measure every rule and say what fails, where, by how much')
    .option('--json', 'print one JSON object')
    .action(async (design: string, options: { json?: boolean }) => done(await checkCommand(design, options, io)));

  program
    .command('balance <design>')
    .description('write the nearest design in which every rule holds and lengths are equal')
    .requiredOption('-o, --output <file>', 'where to write the design')
    .option('--json', 'print one JSON object')
    .action((design: string, options: { output: string; json?: boolean }) => done(balanceCommand(design, options, io)));

  program
    .command('route <design>')
    .description('lay every runner from nothing: fewest bends first, lengths equal, every rule held')
    .requiredOption('-o, --output <file>', 'where to write the best layout')
    .option('--seed <n>', 'same seed and rounds, same bytes; default 1')
    .option('--rounds <n>', 'how many rounds to search; default: until time is up')
    .option('--seconds <s>', 'stop after this long; default 10, or no limit where --rounds is given')
    .option('--inlets <order>', 'of inlets that are not pinned: free, or firing for firing order round the collector')
    .option('--threads <n>', 'how many to search with; default: one a core')
    .option('--alternatives <prefix>', 'write the other layouts too: PREFIX-2.evenrun.json and so on')
    .option('--json', 'print one JSON object')
    .action(async (design: string, options: RouteArguments) => done(await routeCommand(design, options, io)));

  program
    .command('shop <design>')
    .description('write the folder the fabricator needs: bend tables, cut list, STL, templates on paper')
    .requiredOption('-o, --output <folder>', 'the folder to write')
    .option('--paper <size>', 'a4 or letter; default a4')
    .option('--paper-thickness <mm>', 'of the paper that is wrapped round tubes; default 0.1')
    .option('--stations <n>', 'lines round a template, 8 or 16; default 16 where there is room')
    .action(async (design: string, options: ShopArguments) => done(await shopCommand(design, options, io)));

  program
    .command('make <design>')
    .description('compare welding up with bending; pieces, bend rows, what to buy and how it is cut')
    .option('--way <way>', 'welded or bent; default: as the design has it')
    .option('--tube <name>', 'with --way: of this entry of tubes only')
    .option('--workshop <design>', 'take the workshop of another design: shelf, saw, prices')
    .option('-o, --output <file>', 'write the design with that way and workshop')
    .option('--json', 'print one JSON object')
    .action(async (design: string, options: MakeArguments) => done(await makeCommand(design, options, io)));

  program
    .command('template <kind>')
    .description('write the wrap-around template of a saddle, or of a segmented bend’s mitre, true size')
    .requiredOption('-o, --output <file>', 'what to write: a name that ends in .svg or .pdf')
    .option('--tube <size>', 'outside diameter and wall of the tube that is cut: 42.4x1.5, "1 3/4 in x 0.065 in"')
    .option('--onto <length>', 'saddle: outside diameter of the tube that it is set on')
    .option('--angle <degrees>', 'saddle: between the axes, default 90; mitre: what the bend turns in all')
    .option('--offset <length>', 'saddle: how far the axes pass each other; default 0')
    .option('--joints <n>', 'mitre: how many welds the bend has')
    .option('--radius <length>', 'mitre: of the bend’s centerline')
    .option('--measured-on <side>', 'which surface of the tube meets the cut: outside (default) or bore')
    .option('--stations <n>', 'lines round the template, 8 or 16; default 16 where there is room')
    .option('--paper <size>', 'of a .pdf: a4 or letter; default a4')
    .option('--paper-thickness <mm>', 'of the paper that is wrapped round the tube; default 0.1')
    .option('--display <unit>', 'mm or in: of numbers without one, and on the paper; default mm')
    .action(async (kind: string, options: TemplateArguments) => done(await templateCommand(kind, options, io)));

  program
    .command('nest <list>')
    .description('cut a list of lengths out of bars so that least is bought, proved; a line has a length and a count')
    .option(
      '--bar <length>',
      '6000: on sale; 6000x3: three on the shelf; 6000@24.50: at a price; again for more; default 6000 mm',
      also,
    )
    .option('--kerf <length>', 'what a cut takes; default 1.5 mm')
    .option('--end-trim <length>', 'sawn off both ends of every bar; default 5 mm')
    .option('--unit <unit>', 'mm or in: of numbers without one, and of the answer; default mm')
    .option('--seconds <s>', 'how long to search at most; default 20')
    .option('--json', 'print one JSON object')
    .action(async (list: string, options: NestArguments) => done(await nestCommand(list, options, io)));

  const size = program
    .command('size [design]')
    .description('starting lengths and diameters from textbook formulas, with their sources')
    .option('--arrangement <name>', 'all-into-one, pairs-then-one or threes-then-one')
    .option('--unit <unit>', 'mm or in: of numbers without one, and of the answer')
    .option('--json', 'print one JSON object')
    .action((design: string | undefined, options: SizeOptions) => done(sizeCommand(design, options, io)));
  for (const [flag, , , help] of SIZE_OPTIONS) size.option(flag, help);

  const draft = program
    .command('new [form]')
    .description('draw a first header from an engine form, or from the options below')
    .requiredOption('-o, --output <file>', 'where to write the design')
    .option('--title <text>', 'what to call it')
    .option('--banks <lists>', 'cylinders bank by bank: 1-3-5-7/2-4-6-8')
    .option('--firing-order <order>', 'such as 1-3-4-2')
    .option('--rpm <range>', 'lowest and highest speed it is used at: 1500-7000')
    .option('--arrangement <how>', ARRANGEMENTS.join(', '))
    .option('--collectors <lists>', 'cylinders of each collector: 1-2-3/4-5-6');
  for (const [key, meaning] of Object.entries(NUMBERS)) draft.option(`${optionName(key)} <n>`, meaning);
  draft
    .option('--json', 'print one JSON object')
    .action((form: string | undefined, options: NewArguments) => done(newCommand(form, options, io)));

  program
    .command('mirror <design>')
    .description('add the mirror image of a bank')
    .requiredOption('-o, --output <file>', 'where to write the design')
    .option('--bank <n>', 'which of the engine’s banks; default: every cylinder that has a port')
    .option('--cylinders <pairs>', 'the cylinder opposite each: 1=2,3=4; default: by the engine’s banks')
    .option('--point <x,y,z>', 'a point of the plane; default: 0,0,0')
    .option('--normal <x,y,z>', 'square to the plane; default: 0,1,0')
    .option('--names <pairs>', 'new ids: collector=collector 2')
    .option('--surroundings <ids>', 'what stands around to mirror too')
    .option(
      '--service <ids>',
      'what must stay reachable to mirror too; default: spark plugs, where all cylinders are mirrored',
    )
    .option('--json', 'print one JSON object')
    .action((design: string, options: MirrorArguments) => done(mirrorCommand(design, options, io)));

  program
    .command('scan <design>')
    .description('add a scan or mesh of what stands around: STL, OBJ, PLY or GLB')
    .requiredOption('-o, --output <file>', 'where to write the design; the mesh is copied beside it')
    .requiredOption('--file <mesh>', 'the mesh file')
    .option('--unit <unit>', 'its unit: mm, cm, m or in; GLB is in metres, others do not say')
    .option('--id <name>', 'its name; of one that is there: that is replaced. Default: the file’s name')
    .option('--kind <kind>', `what it is, which proposes a clearance: ${KINDS}`)
    .option('--clearance <mm>', 'kept between tubes and it; default: as proposed for its kind')
    .option('--crop <x,y,z,x,y,z>', 'only what reaches into this box counts: along the file’s axes, mm')
    .option('--thin <mm>', 'fewer triangles; no place moves farther than this')
    .option('--points <x,y,z;x,y,z;x,y,z>', 'three points on it, in its own unit')
    .option('--at <x,y,z;x,y,z;x,y,z>', 'the places in the design that they belong to, mm')
    .option('--json', 'print one JSON object')
    .action((design: string, options: ScanArguments) => done(scanCommand(design, options, io)));

  program
    .command('outline <design>')
    .description('take a flange’s outline from a DXF drawing or a scanned gasket')
    .requiredOption('-o, --output <file>', 'where to write the design')
    .requiredOption('--flange <id>', 'the flange that it is of')
    .option('--dxf <file>', 'a drawing: closed polylines, circles, or lines and arcs that meet')
    .option('--unit <unit>', 'mm or in: of a drawing that names none, or inches')
    .option('--picture <file>', 'a scan, PNG or JPEG')
    .option('--between <x1,y1,x2,y2>', 'two points of the picture, in pixels from its top left')
    .option('--distance <length>', 'between the two in truth: 254, or "10 in"')
    .option('--threshold <n>', 'level between dark and light, 1 to 254; default: half-way between ink and paper')
    .option('--fasteners', 'take its holes as the flange’s fasteners')
    .option('--openings', 'take its openings as the ports’')
    .option('--mirror', 'it was drawn or scanned from the other side; default: whichever fits')
    .option('--upside-down', 'of two ways round that fit as well, the other')
    .option('--offset <x,y>', 'where its origin lies, across and up from the first port; default: by the ports')
    .option('--turn <degrees>', 'with --offset: how far it is turned to the left')
    .option('--json', 'print one JSON object')
    .action(async (design: string, options: OutlineArguments) => done(await outlineCommand(design, options, io)));

  const pulse = program
    .command('pulse')
    .description(
      'follow the engine’s gas: torque and power over speed, what a header gains, which size is best; or a rig of pipes',
    )
    .option('-o, --output <file>', 'a table ending in .csv, everything in a .json; again for both', also)
    .option('--on <exhaust>', 'header (default), cast for the manifold before it, or sketch')
    .option('--speeds <n>', 'how many over the band, or a list: 2000,3500,5000; default 12, in a study 6')
    .option('--band <range>', 'where speeds are spread and areas taken: 2500-6500; default: the engine’s')
    .option(
      '--against <other>',
      'what it has over another design, its own cast or sketch, or itself with equal lengths',
    )
    .option('--imbalance <mm>', 'what each mm between longest and shortest primary costs: 20,50,100')
    .option('--study', 'rank many sizes by the area under their torque curves; -o STUDY.json keeps them')
    .option('--lengths <mm>', 'of primaries, to study: 600,700,800; default: 0.7 to 1.3 of the rule of thumb')
    .option('--bores <mm>', 'likewise inside diameters; default: tubes on sale next to the rule of thumb')
    .option('--arrangements <names>', `likewise, of ${ARRANGEMENTS.join(', ')}`)
    .option('--outlets <mm>', 'likewise bores of the collector’s outlet; default: as it is')
    .option('--resume', 'go on with the study in -o STUDY.json')
    .option('--best <file>', 'write the design with the best size of the study')
    .option('--fit', 'calibrate on the design’s measured baseline and write the design with -o')
    .option('--trace <speeds>', 'also write OUT.trace.csv: pressures and flows over the cycle at these')
    .option('--cells <mm>', 'the longest; default 10, in a study 20: shorter takes longer and is surer')
    .option('--threads <n>', 'how many to follow with; default: one a core')
    .option('--rig <file>', 'instead of a design: a rig of pipes; docs/rig.md says what it holds')
    .option('--json', 'print one JSON object')
    .usage('<design> [-o <file>] … | --rig <file> -o <file.csv>')
    .allowExcessArguments()
    .action(async (options: PulseArguments) => done(await pulseCommand(pulse.args, options, io)));

  program
    .command('compare <before> <after>')
    .description('say what differs between two versions of a design: 0 nothing, 1 something')
    .option('--json', 'print one JSON object')
    .action((before: string, after: string, options: { json?: boolean }) =>
      done(compareCommand(before, after, options, io)),
    );

  // Whatever is no command lands here; commander's own answer would be its whole help on standard error.
  program
    .argument('[command]')
    .usage('<command> …')
    .allowExcessArguments()
    .action((command?: string) => {
      const asked = command === undefined ? 'which command?' : `there is no command "${command}":`;
      const names = program.commands.map((c) => c.name());
      throw new UnusableInput(`${asked} ${names.slice(0, -1).join(', ')} or ${names.at(-1)}; evenrun --help says more`);
    });
  return program;
}
