/** An invented engine on invented pipes, and answers that nobody followed: for tests of what is shown, not of what is worked out. */

import type { RunKind, Subject } from '../../../src/app/forecast/runs';
import type { EngineSetup } from '../../../src/pulse/engine/types';
import type { SpeedAnswer } from '../../../src/pulse/forecast/types';
import type { GasPath } from '../../../src/pulse/path/types';
import { four } from '../../pulse/engines';
import { answerAt } from '../../pulse/forecast/fakes';

/** Two of the four's cylinders. */
export const ENGINE: EngineSetup = {
  ...four,
  cylinders: [1, 2],
  fires: [0, 360],
  firingOrder: [1, 2],
  speeds: [2000, 6000],
};

export const pathOf = (length: number): GasPath => ({
  title: 'sketch',
  pipes: [
    {
      id: 'a',
      role: 'primary',
      length,
      diameter: [
        [0, 0.036],
        [length, 0.036],
      ],
      roughness: 1e-5,
      wallTemperature: 700,
      inHead: 0.08,
      part: { runner: 'r1' },
    },
  ],
  ends: [{ kind: 'open', at: ['a', 'finish'] }],
  valves: [{ cylinder: 1, pipe: 'a', share: 1 }],
});

export const subject = (kind: RunKind, length = 0.8): Subject => ({
  kind,
  title: { header: 'This header', cast: 'Cast manifold' }[kind as string] ?? kind,
  engine: ENGINE,
  path: pathOf(length),
  assumed: [{ path: 'engine/rod', name: 'Rod', taken: '140 mm', why: '1.75 strokes, as is common' }],
  notes: [],
});

/** A hump of torque over the speed, so that curves have a shape. */
export const torqueAt = (rpm: number, top = 100): number => top - ((rpm - 4000) / 400) ** 2;

export const answerOf = (rpm: number, over: Partial<SpeedAnswer> = {}): SpeedAnswer =>
  answerAt(rpm, over.torque ?? torqueAt(rpm), over);
