/**
 * What bending needs to know, defaults filled in: mm; stretch as a share. A bend of arc R × angle takes R × angle × (1 − stretch)
 * of the straight tube: that is the one convention of all marks, feeds and lengths sawn. What springing back leaves along the
 * tube is in the stretch that the user measures.
 */
import type { Tooling } from '../../../../shared/design/types';
import type { WorkshopDefaults } from '../../../../shared/stock/workshop';
import { type Springback, springback } from './springback';

export type BenderSettings = {
  readonly clamp: number;
  readonly tail: number;
  readonly stretch: number;
  readonly springback: Springback;
  /** Of `turn` and `dial` beside `rotation`, which is right-handed. */
  readonly sign: 1 | -1;
};

export const benderOf = (tooling: Tooling, { rotation }: Pick<WorkshopDefaults, 'rotation'>): BenderSettings => {
  const { clamp = tooling.betweenStraight, tail = tooling.lastStraight, testBends, stretch = 0 } = tooling.bender ?? {};
  const sign = rotation === 'right-handed' ? 1 : -1;
  return { clamp, tail, stretch: stretch / 100, springback: springback(testBends), sign };
};
