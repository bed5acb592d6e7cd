/** The process around `run`: standard streams, the exit code, and a reader that stops listening. */
import type { Io } from './io';
import { run } from './run';

// `evenrun check … | head` closes the pipe early: that is no error. The exit code stands all the same.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

// Run by npm in a checkout, the process stands in the project's folder; paths are meant from where the user stands.
const byNpm = process.env.npm_lifecycle_event === 'evenrun' ? process.env.INIT_CWD : undefined;

const io: Io = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  cwd: byNpm ?? process.cwd(),
};

// Not process.exit: what is still being written to a pipe would be cut off.
process.exitCode = await run(process.argv.slice(2), io);
