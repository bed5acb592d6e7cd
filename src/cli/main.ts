/** The process around `run`: standard streams, the exit code, and a reader that stops listening. */
import { constants } from 'node:os';
import { isatty } from 'node:tty';
import { fileURLToPath } from 'node:url';
import { setFlagsFromString } from 'node:v8';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { startSpeed } from '../pulse/forecast/startSpeed';
import { reasonOf } from './files';
import { FAILS, type Io, UNUSABLE } from './io';
import { type SpeedThread, serveSpeeds } from './pulse/serve';
import type { Job } from './route/job';
import { serveRounds } from './route/thread';
import { run } from './run';

/** What asks a command to end: Ctrl+C, the system or whoever started it, a terminal that is closed. */
const ENDINGS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

// The same file is what further threads run: installed, it is the only one there is.
if (isMainThread) await main();
else serve(workerData as Job | SpeedThread);

function serve(work: Job | SpeedThread): void {
  if ('kind' in work) serveSpeeds(parentPort!, startSpeed);
  else serveRounds(work, parentPort!);
}

async function main(): Promise<void> {
  // A command is over in a second or so, most of it run before it is compiled well: compiled in smaller pieces it is soon
  // fast. Laying a header first takes 0.87 as long so, and a long search 1.04. It holds for all threads of the process.
  // Following a gas flow is one loop run for long, and takes 0.89 as long when it is compiled whole.
  if (process.argv[2] !== 'pulse') {
    setFlagsFromString('--max-inlined-bytecode-size=150');
    setFlagsFromString('--max-inlined-bytecode-size-cumulative=300');
  }

  // `evenrun check … | head` closes the pipe early: that is no error. The exit code stands all the same. Anything else, such as a
  // full disk, leaves the answer unsaid: that must not pass for one. Where the terminal is gone, nobody is there to be told.
  let isUnsaid = false;
  let ending: (typeof ENDINGS)[number] | null = null;
  for (const stream of [process.stdout, process.stderr]) {
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE' || ending === 'SIGHUP') return;
      if (typeof error.code !== 'string') throw error;
      if (stream === process.stdout && !isUnsaid)
        process.stderr.write(`evenrun: standard output: cannot write to it: ${reasonOf(error.code)}\n`);
      isUnsaid = true;
      process.exitCode = UNUSABLE;
    });
  }

  const hasTerminal = [0, 1, 2].some((stream) => isatty(stream));

  // Run by npm in a checkout, the process stands in the project's folder; paths are meant from where the user stands.
  const byNpm = process.env.npm_lifecycle_event === 'evenrun' ? process.env.INIT_CWD : undefined;

  const io: Io = {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    cwd: byNpm ?? process.cwd(),
    process: {
      startThread: (job) => new Worker(fileURLToPath(import.meta.url), { workerData: job }),
      onInterrupt(act) {
        const hear = (signal: NodeJS.Signals): void => {
          ending ??= signal as (typeof ENDINGS)[number];
          act();
        };
        for (const signal of ENDINGS) process.on(signal, hear);
        return () => {
          for (const signal of ENDINGS) process.off(signal, hear);
        };
      },
      ...(process.stderr.isTTY ? { status: (line) => void process.stderr.write(`\r\u001b[K${line}`) } : {}),
    },
  };

  // Not process.exit: what is still being written to a pipe would be cut off.
  const code = await run(process.argv.slice(2), io);
  process.exitCode = isUnsaid ? UNUSABLE : codeAfter(code, ending);
  // All is written. The runtime aborts where it cannot put a terminal back that is gone; the signal itself, heard no more, says the same.
  if (hasTerminal && ending === 'SIGHUP') process.kill(process.pid, ending);
}

/** Ended from outside, a command answers as the shell has it for that signal, 128 and its number; Ctrl+C is one of our own answers. */
function codeAfter(code: number, ending: (typeof ENDINGS)[number] | null): number {
  if (ending === null || ending === 'SIGINT' || code !== FAILS) return code;
  return 128 + constants.signals[ending];
}
