/** The process that `followed.ts` starts: jobs on standard input, answers on standard output. */
import { readFileSync } from 'node:fs';
import type { SpeedJob } from '../../src/pulse/forecast/job';
import { followSpeed } from '../../src/pulse/forecast/startSpeed';

const jobs = JSON.parse(readFileSync(0, 'utf8')) as SpeedJob[];
process.stdout.write(JSON.stringify(jobs.map(followSpeed)));
