/**
 * `pulse DESIGN`: torque and power of the engine on its exhaust, over speed; what one exhaust has over another; many sizes ranked.
 * `pulse --rig RIG -o OUT.csv`: waves in a rig of pipes without an engine.
 */
import { startSpeed } from '../../pulse/forecast/startSpeed';
import type { Running } from '../../pulse/report';
import type { Rig } from '../../pulse/rig/types';
import { startRig } from '../../pulse/startRig';
import { type Io, oneLine, UnusableInput } from '../io';
import { type Context, contextOf } from '../pulse/context';
import { againstMode } from '../pulse/modes/against';
import { curveMode } from '../pulse/modes/curve';
import { fitMode } from '../pulse/modes/fit';
import { imbalanceMode } from '../pulse/modes/imbalance';
import { studyMode } from '../pulse/modes/study';
import { type PulseArguments, refuseOthers } from '../pulse/options';
import { followRig } from '../pulse/rig';
import type { Start } from '../pulse/serve';

const DESIGN_USAGE = 'evenrun pulse DESIGN [-o OUT.csv]';
const RIG_USAGE = 'evenrun pulse --rig RIG.json -o OUT.csv';

/** What can be asked about a design, by the option that asks it. Without any: its curve. */
const MODES: readonly (readonly [option: keyof PulseArguments, follow: (at: Context) => Promise<number>])[] = [
  ['against', againstMode],
  ['imbalance', imbalanceMode],
  ['study', studyMode],
  ['fit', fitMode],
];

/** @param more what stands on the line besides options. @param rigs for tests. @param start for tests */
export async function pulseCommand(
  more: readonly string[],
  given: PulseArguments,
  io: Io,
  rigs: (rig: Rig) => Running = (rig) => startRig(rig),
  start: Start = startSpeed,
): Promise<number> {
  const { rig } = given;
  if (rig !== undefined) {
    refuseOthers(given, ['rig', 'output', 'json'], '--rig, which has no engine');
    return followRig(more, { rig, json: given.json === true, ...oneOutput(given.output) }, io, rigs);
  }
  const [name, ...rest] = more;
  if (name === undefined)
    throw new UnusableInput(`pulse: give it a design, ${DESIGN_USAGE}; or a rig of pipes, ${RIG_USAGE}`);
  if (rest.length > 0)
    throw new UnusableInput(`pulse: found "${oneLine(rest[0]!)}" besides the design: ${DESIGN_USAGE}`);
  const asked = MODES.filter(([option]) => given[option] !== undefined && given[option] !== false);
  if (asked.length > 1)
    throw new UnusableInput(`--${asked[1]![0]}: does not go with --${asked[0]![0]}; ask one after the other`);
  const follow = asked[0]?.[1] ?? curveMode;
  return follow(contextOf(name, given, io, start));
}

function oneOutput(given: PulseArguments['output']): { output?: string } {
  const names = given === undefined ? [] : [given].flat();
  if (names.length > 1) throw new UnusableInput(`-o, --output: found ${names.length} names; allowed: one with --rig`);
  return names.length === 0 ? {} : { output: names[0]! };
}
