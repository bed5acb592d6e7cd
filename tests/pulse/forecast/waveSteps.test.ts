/** Steps of pressure that come to the valve, in fields that are made up: which way each runs, and how steep it is, is known. */
import { describe, expect, it } from 'vitest';
import { firesAfter } from '../../../src/pulse/forecast/gasExchange';
import { burntGamma, burntSound } from '../../../src/pulse/forecast/waveField';
import { waveSteps } from '../../../src/pulse/forecast/waveSteps';
import { stepWords } from '../../../src/pulse/forecast/waveWords';
import { answerOf, ENGINE, fourIntoOne, pictureOf, type StateAt } from './invented';

const PRIMARY = 0.8;
const RPM = 6000;
const REST = ENGINE.air.pressure;
const sound = burntSound(900);
const path = fourIntoOne(PRIMARY, 0.5);

const degreesAlong = (x: number) => (x / sound) * 6 * RPM;
const HEIGHT = 12e3;
/** From 0 to 1 over so many degrees, up at once and down slowly, round the cycle. */
const shape = (angle: number, over: number) => {
  const at = ((angle % 720) + 720) % 720;
  return at < over ? at / over : Math.max(0, 1 - (at - over) / 300);
};
const run = (at: StateAt) => ({ engine: ENGINE, path, answer: answerOf(RPM, pictureOf(path, at)) });
/** A simple wave in gas at rest: u = ∓Δp/(ρc), small enough for that. */
const simple = (rise: number, direction: 1 | -1) => ({
  pressure: REST + rise,
  velocity: (direction * rise * sound) / (burntGamma(900) * REST),
});

describe('a step that runs up cylinder 1’s pipe', () => {
  const toward: StateAt = (pipe, x, angle) =>
    pipe === 'p1' ? simple(HEIGHT * shape(angle - 40 + degreesAlong(x), 4), -1) : {};

  it('is found when it comes, with what runs toward the valve alone', () => {
    const found = waveSteps(run(toward), 1);
    expect(found).toHaveLength(1);
    // It is at the valve from 40° to 44°.
    expect(Math.abs(found[0]!.angle - 42)).toBeLessThanOrEqual(2);
    expect(found[0]!.rise).toBeGreaterThan(0.85 * HEIGHT);
    expect(found[0]!.rise).toBeLessThan(1.1 * HEIGHT);
    expect(found[0]!.turn).toMatchObject({ pipe: 'p1', onward: 'c' });
  });

  it('is no other cylinder’s', () => {
    expect(waveSteps(run(toward), 3)).toEqual([]);
  });

  it('is said with its place and its height', () => {
    const [step] = waveSteps(run(toward), 1);
    expect(stepWords(path, { ...step!, angle: 42, rise: 11_800 })).toBe(
      'A step of pressure comes from the collector to the valve at 42°: what runs toward it rises by 12 kPa.',
    );
  });
});

it('a step in cylinder 3’s pipe is told in its own degrees', () => {
  const at: StateAt = (pipe, x, angle) =>
    pipe === 'p3' ? simple(HEIGHT * shape(angle - 40 + degreesAlong(x), 4), -1) : {};
  const [step] = waveSteps(run(at), 3);
  expect(Math.abs(step!.angle - (42 - firesAfter(ENGINE, 3)))).toBeLessThanOrEqual(2);
});

describe('no step comes', () => {
  const none = (at: StateAt) => expect(waveSteps(run(at), 1)).toEqual([]);

  it('where it runs from the valve', () =>
    none((pipe, x, angle) => (pipe === 'p1' ? simple(HEIGHT * shape(angle - 40 - degreesAlong(x), 4), 1) : {})));

  it('where a shock stands in the port: pressure steps there and nowhere along the pipe', () =>
    none((pipe, x, angle) => (pipe === 'p1' && x < 0.1 ? { pressure: REST + HEIGHT * shape(angle - 40, 4) } : {})));

  it('where pressure rises slowly', () =>
    none((pipe, x, angle) => (pipe === 'p1' ? simple(HEIGHT * shape(angle - 40 + degreesAlong(x), 60), -1) : {})));

  it('where no waves were kept', () => {
    expect(waveSteps({ engine: ENGINE, path, answer: answerOf(RPM, null) }, 1)).toEqual([]);
  });
});
