/** The play: where in the cycle it is, who does what then, and the colours of the tubes at an instant. */
import { beforeEach, describe, expect, it } from 'vitest';
import { happeningAt } from '../../../../src/app/forecast/motion/happening';
import {
  moveOn,
  playOnHeader,
  scrubTo,
  setPace,
  setPlaying,
  stopOnHeader,
  useMotion,
} from '../../../../src/app/forecast/motion/state';
import {
  colourCorners,
  colourRings,
  linearRamp,
  pipeOfMerge,
  pipeOfRunner,
  ringPlaces,
} from '../../../../src/app/forecast/motion/tubeColours';
import { ARM, SHADES } from '../../../../src/app/pulse/ramp';
import { fieldOf } from '../../../../src/pulse/forecast/waveField';
import { answerOf, ENGINE, fourIntoOne, pictureOf } from '../../../pulse/forecast/invented';

const path = fourIntoOne(0.8, 0.5);
const run = {
  name: 'Header',
  engine: ENGINE,
  path,
  answer: answerOf(
    5000,
    pictureOf(path, () => ({})),
  ),
};

describe('the play', () => {
  beforeEach(stopOnHeader);

  it('moves on by its pace, round the cycle, and never leaps', () => {
    playOnHeader(run);
    setPace(180);
    scrubTo(350);
    expect(useMotion.getState().playing).toBe(false);
    moveOn(0.05);
    expect(useMotion.getState().angle).toBe(350);
    setPlaying(true);
    moveOn(0.1);
    expect(useMotion.getState().angle).toBeCloseTo(-352, 9);
    moveOn(60);
    expect(useMotion.getState().angle).toBeCloseTo(-334, 9);
  });

  it('needs waves, and is over when it is stopped', () => {
    playOnHeader({ ...run, answer: answerOf(5000, null) });
    expect(useMotion.getState().run).toBeNull();
    playOnHeader(run);
    expect(useMotion.getState().run).toBe(run);
    stopOnHeader();
    expect(useMotion.getState()).toMatchObject({ run: null, playing: false });
  });
});

describe('what happens at an angle', () => {
  it('follows the firing order 1, 3, 4, 2', () => {
    // The first cylinder fires at −360 of its own degrees; 180° later the third one does.
    expect([-359, -179, 1, 181].map((angle) => happeningAt(ENGINE, angle).fired)).toEqual([1, 3, 4, 2]);
  });

  it('tells whose exhaust valves are open, the last to open first, and who overlaps', () => {
    expect(happeningAt(ENGINE, -200)).toEqual({ fired: 1, exhausting: [1, 2], overlapping: [] });
    expect(happeningAt(ENGINE, 0)).toMatchObject({ exhausting: [3, 1], overlapping: [1] });
    // Cylinder 3's exhaust valve opens 180° after the first one's, at −52° of the latter.
    expect(happeningAt(ENGINE, -54).exhausting).toEqual([1]);
    expect(happeningAt(ENGINE, -50).exhausting).toEqual([3, 1]);
  });
});

describe('the colours of a tube', () => {
  const shades = new Uint8Array((2 * 3 + 4) * 4 * 3).fill(255);
  const picture = pictureOf(path, (_, x) => ({ pressure: 1e5 + (x - 0.4) * 1e5 }), 2, 0.01);
  const pipe = picture.pipes[0]!;
  const moment = {
    field: fieldOf(picture),
    angle: 0,
    quantity: 'pressure',
    spread: { mean: 1e5, half: 1e4 },
    theme: 'light',
  } as const;
  const table = linearRamp('light');
  const shade = (index: number) => [0, 1, 2].map((k) => table[3 * index + k]!);

  it('are those of the ramp at each ring’s place, wall, bore and ends alike', () => {
    const out = new Float32Array(shades.length);
    colourRings(out, shades, Float32Array.from([0, 0.4, 0.8]), pipe, moment);
    const ring = (k: number) => [...out.slice(12 * k, 12 * k + 3)];
    for (const k of [0, 3, 6, 7]) expect(ring(k)).toEqual(shade(0));
    for (const k of [1, 4]) expect(ring(k)).toEqual(shade(ARM));
    for (const k of [2, 5, 8, 9]) expect(ring(k)).toEqual(shade(SHADES - 1));
  });

  it('keep the greys of the quick picture', () => {
    const dim = shades.slice().fill(51);
    const out = new Float32Array(dim.length);
    colourCorners(out, dim, new Float32Array(dim.length / 3).fill(0.4), pipe, moment);
    const [r] = shade(ARM);
    expect(out[0]).toBeCloseTo(r! / 5, 6);
  });

  it('begin after the part that lies in the head', () => {
    const places = ringPlaces(Float32Array.from([0, 100, 900]), -20, { length: 0.8, inHead: 0.08 });
    expect([...places].map((place) => Number(place.toFixed(4)))).toEqual([0.06, 0.16, 0.8]);
  });

  it('are of the pipe that the runner or the collector is', () => {
    expect(pipeOfRunner(path, 'p3')?.id).toBe('p3');
    expect(pipeOfMerge(path, 'm1')).toBeUndefined();
  });
});
