/** How a pipe of the way is called on screen: its role in the trade's word, then its name; and how long it is. */
import type { GasPath } from '../../../pulse/path/types';
import type { PipeWords } from './WavePlot';

/** A pipe that is not of the exhaust's path (an intake's runner) has its name alone. */
export function pipeWords(path: GasPath, id: string): PipeWords {
  const pipe = path.pipes.find((one) => one.id === id);
  if (!pipe) return { name: id, length: '' };
  // Names that say their role already are not said twice.
  const said = id.toLowerCase().startsWith(pipe.role);
  return { name: said ? id : `${pipe.role} ${id}`, length: `${(pipe.length * 1000).toFixed(0)} mm` };
}
