/**
 * The followed way against the gas itself: one cylinder on one open pipe, run by the solver. The blow-down comes back from the mouth as
 * suction, so the least that runs toward the valve must come when the traced peak does, though the trace never looks at pressures.
 */
import { describe, expect, it } from 'vitest';
import { sourcesWords } from '../../../src/pulse/forecast/sourceWords';
import { followSpeed } from '../../../src/pulse/forecast/startSpeed';
import { twoWaves } from '../../../src/pulse/forecast/superposition';
import { fieldOf, readField } from '../../../src/pulse/forecast/waveField';
import { wavePaths } from '../../../src/pulse/forecast/wavePath';
import { overlapSources } from '../../../src/pulse/forecast/waveSources';
import type { GasPath } from '../../../src/pulse/path/types';
import { ENGINE, pathPipe } from './invented';

const engine = {
  ...ENGINE,
  cylinders: [1],
  fires: [0],
  firingOrder: [1],
  intake: { ...ENGINE.intake, plenumVolume: null },
};

describe('one cylinder on one open pipe', () => {
  it.each([
    [0.8, 4000],
    [1.2, 4000],
    [1.6, 3000],
  ])('of %s m at %s rpm: suction comes to the valve when the traced wave does', (length, rpm) => {
    const path: GasPath = {
      title: 'one pipe',
      pipes: [pathPipe('p1', 'primary', length, 0.04)],
      ends: [{ kind: 'open', at: ['p1', 'finish'] }],
      valves: [{ cylinder: 1, pipe: 'p1', share: 1 }],
    };
    const answer = followSpeed({ engine, path, rpm, cell: 0.02, keep: 'waves' });
    const [wave] = wavePaths({ engine, path, answer }, 1, 'peak');
    const field = fieldOf(answer.waves!);
    const pipe = field.pipes.get('p1')!;
    let [trough, least] = [0, Infinity];
    for (let angle = -232; angle <= 14; angle++) {
      const { pressure, velocity, temperature } = readField(field, pipe, angle, 0);
      const { back } = twoWaves(pressure, velocity, temperature, engine.air.pressure);
      if (back < least) [trough, least] = [angle, back];
    }
    expect(wave!.strength).toBeCloseTo(-1, 9);
    // A pulse of finite height steepens on its way: its peak runs ahead of sound by a degree or two.
    expect(Math.abs(wave!.arrival! - trough)).toBeLessThan(4);
    expect(wave!.carried!).toBeLessThan(-15_000);
    // Found back from the overlap, in gas that knows friction, steepening and a valve that lets it through.
    const { toward, parts, rest } = overlapSources({ engine, path, answer }, 1)!;
    const kinds = new Set(parts.map(({ from, turn }) => `${from} ${turn.kind}`));
    expect(kinds).toEqual(new Set(['1 mouth']));
    const run = { engine, path, answer };
    // Where the mouth has drawn in much cold air, areas alone tell little, and it is said so.
    if (length < 1)
      expect(sourcesWords(run, 1, overlapSources(run, 1)!)).toMatch(/[2-6]\d % of all this could not be traced\.$/);
    else expect(Math.abs(rest)).toBeLessThan(0.2 * Math.abs(toward));
  });
});
