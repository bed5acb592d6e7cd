/** `pulse DESIGN` in this process with an invented engine in place of the followed one, so that a curve takes no time. */
import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { pulseCommand } from '../../src/cli/commands/pulse';
import type { PulseArguments } from '../../src/cli/pulse/options';
import { readCsv } from '../../src/formats/csv/readCsv';
import type { RunningSpeed, SpeedJob } from '../../src/pulse/forecast/job';
import { FlowStopped } from '../../src/pulse/report';
import { answerAt, FOUR, inventedTorque } from '../pulse/forecast/fakes';
import { type Answer, type Bench, bench } from './bench';

/** The same header as FOUR; and as `unrouted`, without points. */
export const DESIGN = 'four.evenrun.json';
export const UNLAID = 'unlaid.evenrun.json';

export function bringDesigns({ folder }: Bench): void {
  cpSync(FOUR, join(folder, DESIGN));
  const design = JSON.parse(readFileSync(FOUR, 'utf8'));
  for (const runner of design.runners) {
    delete runner.points;
    delete runner.radii;
  }
  writeFileSync(join(folder, UNLAID), JSON.stringify(design));
}

/** Three turns to an answer. @param of torque, or a word where the flow stops */
export const invented =
  (of: (job: SpeedJob) => number | string = inventedTorque, settled = true) =>
  (job: SpeedJob): RunningSpeed => {
    let turns = 0;
    return {
      get cycles() {
        return turns;
      },
      likely: 3,
      advance: () => {
        const torque = of(job);
        if (typeof torque === 'string') throw new FlowStopped(0.01, 'r1', 3, 0.2, torque);
        return ++turns >= 3;
      },
      answer: () => answerAt(job.rpm, of(job) as number, { settled }),
    };
  };

export type Told = Answer & { readonly shown: readonly string[] };

/** @param interrupts after so many speeds have begun @param start in place of the invented engine */
export async function pulse(
  { folder }: Bench,
  more: readonly string[],
  given: PulseArguments,
  start: (job: SpeedJob) => RunningSpeed = invented(),
  interrupts = Number.POSITIVE_INFINITY,
): Promise<Told> {
  const printed = { out: '', err: '', shown: [] as string[] };
  let act = (): void => {};
  let begun = 0;
  const io = {
    out: (text: string) => {
      printed.out += text;
    },
    err: (text: string) => {
      printed.err += text;
    },
    cwd: folder,
    process: {
      startThread: () => {
        throw new Error('none is needed');
      },
      onInterrupt: (then: () => void) => {
        act = then;
        return () => {};
      },
      status: (line: string) => void printed.shown.push(line),
    },
  };
  const counting = (job: SpeedJob): RunningSpeed => {
    if (++begun > interrupts) act();
    return start(job);
  };
  const code = await pulseCommand(more, { threads: '1', ...given }, io, undefined, counting);
  return { code, ...printed };
}

/** A folder with the designs before every test of a file, and what is asked and read in it. */
export function designBench() {
  let b: Bench;
  beforeEach(() => {
    b = bench();
    bringDesigns(b);
  });
  afterEach(() => b.clear());
  const at = (name: string): string => join(b.folder, name);
  const text = (name: string): string => readFileSync(at(name), 'utf8');
  return {
    bench: () => b,
    at,
    text,
    table: (name: string) => readCsv(text(name)),
    ask: (given: PulseArguments, start = invented(), interrupts = Number.POSITIVE_INFINITY) =>
      pulse(b, [DESIGN], given, start, interrupts),
    /** The design with fields of its engine or exhaust set, under another name. */
    change(name: string, fields: Record<string, unknown>): string {
      writeFileSync(at(name), JSON.stringify({ ...JSON.parse(text(DESIGN)), ...fields }));
      return name;
    },
  };
}
