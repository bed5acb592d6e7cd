/** Whether waves can be shown on the drawn header: a sketch's pipes are no tubes of it. */
import type { WaveRun } from '../waves/runs';

export const hasTubes = ({ path }: Pick<WaveRun, 'path'>): boolean => path.pipes.some(({ part }) => part !== null);
