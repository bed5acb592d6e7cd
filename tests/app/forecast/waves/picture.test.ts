/** Where waves lie on screen: pipes end to end, the picture turned into a cylinder's own degrees, and the ways drawn on it. */
import { describe, expect, it } from 'vitest';
import { angleText, angleTicks, deadCentre } from '../../../../src/app/forecast/waves/angles';
import { drawnSource, drawnWave, pathLines, toldWaves } from '../../../../src/app/forecast/waves/pathLines';
import { rolled, spreadOf } from '../../../../src/app/forecast/waves/roll';
import { ASIDE, placeAt, planWay, wayX } from '../../../../src/app/forecast/waves/wayPlan';
import { valueAt } from '../../../../src/app/pulse/sample';
import { type PathRun, type WavePath, wavePaths } from '../../../../src/pulse/forecast/wavePath';
import { foremost } from '../../../../src/pulse/forecast/waveWords';
import { answerOf, ENGINE, fourTwoOne, pictureOf } from '../../../pulse/forecast/invented';

const path = fourTwoOne(0.4, 0.5, 0.6);
/** Every pressure says which pipe, place and angle it is of. */
const told = (pipe: string, x: number, angle: number) =>
  100_000 + 1000 * Math.sin((angle * Math.PI) / 180) + 500 * x + (pipe === 't' ? 4000 : 0);
const waves = pictureOf(path, (pipe, x, angle) => ({ pressure: told(pipe, x, angle), temperature: 900 }));

describe('the picture in a cylinder’s own degrees', () => {
  it.each([0, 180, 540, 45, 90.5])('is of the same place and instant where it fires %s° later', (fires) => {
    const picture = rolled(waves, fires, ['p1', 't'], { from: -250, to: 260 });
    expect(picture.pipes.map(({ pipe }) => pipe)).toEqual(['p1', 't']);
    for (const [k, x, own] of [
      [0, 0.205, -250],
      [0, 0.105, -14],
      [1, 0.305, 0],
      [1, 0.405, 259],
    ] as const) {
      const found = valueAt(picture, picture.times.length, k, x, own + 250, 'pressure')!;
      // Rows are 2° apart, linear between.
      expect(Math.abs(found - told(k === 1 ? 't' : 'p1', x, own + fires))).toBeLessThan(1);
    }
  });

  it('leaves out a pipe that the answer has no picture of', () => {
    expect(rolled(waves, 0, ['p1', 'nowhere'], { from: -250, to: 260 }).pipes).toHaveLength(1);
    expect(spreadOf(waves, ['nowhere'])).toBeNull();
  });

  it('has colours about the mean of its pipes, as far as nearly all values lie', () => {
    const { mean, half } = spreadOf(waves, ['p1'])!;
    expect(mean).toBeCloseTo(100_100, -1.3);
    expect(half).toBeGreaterThan(900);
    expect(half).toBeLessThan(1150);
    const stream = pictureOf(path, () => ({ velocity: 60 }));
    expect(spreadOf(stream, ['p1'], 'velocity')).toEqual({ mean: 0, half: 60 });
  });
});

describe('the pipes of a way', () => {
  const pipes = rolled(waves, 0, ['p1', 's1', 't'], { from: -250, to: 260 }).pipes;

  it('lie end to end, to one scale', () => {
    const panels = planWay(pipes, 90, 900);
    panels.slice(1).forEach(({ left }, k) => {
      expect(left).toBeCloseTo(panels[k]!.left + panels[k]!.width, 9);
    });
    expect(panels[0]!.left).toBe(90);
    expect(panels[2]!.left + panels[2]!.width).toBeCloseTo(990, 9);
    for (const { width, from, to } of panels) expect(width / (to - from)).toBeCloseTo(600, 6);
    expect(panels.map(({ from }) => from)).toEqual([0, 0, 0].map((zero) => expect.closeTo(zero, 9)));
  });

  it('are found again under the pointer', () => {
    const panels = planWay(pipes, 90, 900);
    const px = wayX(panels[1]!, 0.25);
    expect(placeAt(panels, px)).toEqual({ panel: 1, x: expect.closeTo(0.25, 9) });
    expect(placeAt(panels, 0)).toEqual({ panel: 0, x: expect.closeTo(0, 9) });
    expect(placeAt(panels, 5000)).toEqual({ panel: 2, x: expect.closeTo(0.6, 9) });
  });

  it('leave room before one that stands beside the way', () => {
    const panels = planWay(pipes, 0, 900, 1);
    expect(panels[2]!.left - panels[1]!.left - panels[1]!.width).toBeCloseTo(ASIDE, 9);
    expect(panels[2]!.left + panels[2]!.width).toBeCloseTo(900, 9);
  });
});

describe('a followed wave over the picture', () => {
  const run: PathRun = { engine: ENGINE, path, answer: answerOf(5000, waves) };
  const view = { from: -250, to: 260 };
  const pipes = rolled(waves, 0, ['p1', 's1', 't'], view).pipes;
  const panels = planWay(pipes, 0, 1500);
  const toY = (angle: number) => 260 - angle;
  const ends = (d: string) => {
    const at = d
      .slice(1)
      .split('L')
      .map((pair) => pair.split(' ').map(Number));
    return [at[0]!, at.at(-1)!];
  };

  it('runs from the valve to where it turns and back to when it arrives', () => {
    const mouth = wavePaths(run, 1, 'opening').find(({ turn }) => turn.kind === 'mouth')!;
    const lines = pathLines(drawnWave(mouth), panels, view, toY);
    expect(lines.map(({ suction }) => suction)).toEqual([false, false, false, true, true, true]);
    expect(ends(lines[0]!.d)[0]).toEqual([0, 260 + 232]);
    expect(ends(lines[2]!.d)[1]![0]).toBeCloseTo(1500, 0);
    const [x, y] = ends(lines[5]!.d)[1]!;
    expect(x).toBeCloseTo(0, 0);
    expect(y).toBeCloseTo(260 - mouth.arrival!, 0);
  });

  it('of another cylinder is drawn where its pipes are on screen alone, and keeps its kind', () => {
    const across = wavePaths(run, 1, 'opening').find(({ from }) => from === 3)!;
    const lines = pathLines(drawnWave(across), panels, view, toY);
    expect(lines.length).toBeGreaterThan(0);
    expect(lines.every(({ suction, back }) => !suction && back)).toBe(true);
  });

  it('found back from the overlap is drawn as what it was sent, and as what it comes as', () => {
    const mouth = wavePaths(run, 1, 'opening').find(({ turn }) => turn.kind === 'mouth')!;
    const part = { from: 1, turn: mouth.turn, taper: false, pressure: -4000, left: -200, sent: 9000, legs: mouth.legs };
    const drawn = drawnSource(part, 1, ['p1', 's1', 't']);
    expect(drawn).toMatchObject({ arrival: mouth.arrival, suction: true, leaves: { angle: mouth.start } });
    expect(drawn.legs.map(({ suction }) => suction)).toEqual([false, false, false, true, true, true]);
    // Of another cylinder: in its own pipe as it was sent, whichever way.
    const other = { ...part, from: 3, pressure: 4000, sent: -9000 };
    expect(drawnSource(other, 1, ['s1', 't'])).toMatchObject({ leaves: null, suction: false });
    expect(drawnSource(other, 1, ['s1', 't']).legs.map(({ suction }) => suction)).toEqual([
      ...[true, true, true],
      ...[false, false, true],
    ]);
  });

  it('is told first where it meets the overlap most strongly, else where it comes nearest', () => {
    const waves = wavePaths(run, 1, 'opening');
    const at = (wave: WavePath, arrival: number, strength: number): WavePath => ({
      ...wave,
      arrival,
      strength,
      phase: arrival + 2,
      carried: null,
      inOverlap: arrival > -18 && arrival < 14,
    });
    const [a, b] = [waves[0]!, waves[1]!];
    expect(foremost(run, [at(a, -10, -0.2), at(b, 5, -0.5)], null)).toMatchObject({ arrival: 5 });
    expect(foremost(run, [at(a, -40, -0.2), at(b, 90, -0.5)], null)).toMatchObject({ arrival: -40 });
    // Of two that meet it, the one that the gas bears out.
    const outweighed = { ...at(b, 5, -0.5), carried: 5000 };
    expect(foremost(run, [{ ...at(a, -10, -0.2), carried: -5000 }, outweighed], null)).toMatchObject({ arrival: -10 });
    expect(foremost(run, [outweighed], null)).toMatchObject({ arrival: 5 });
    expect(foremost(run, [{ ...a, arrival: null }], null)).toBeNull();
    // The pressure at the port says which kind to look for: one a little before the overlap has part in it, one far off has not.
    const held = { exhaustPort: 48_000, offMean: -50_000, intakePort: 95_000, exhaustFlow: 0.0088, intakeFlow: 0.009 };
    expect(foremost(run, [at(a, -49, -0.5), at(b, 5, 0.4)], held)).toMatchObject({ arrival: -49 });
    expect(foremost(run, [at(a, -90, -0.5), at(b, 5, 0.4)], held)).toMatchObject({ arrival: 5 });
    expect(foremost(run, [at(a, -49, -0.5), at(b, 5, 0.4)], { ...held, offMean: 50_000 })).toMatchObject({
      arrival: 5,
    });
  });

  it('is told of only where it comes while the valve is open or soon after', () => {
    const all = wavePaths(run, 1).filter(({ strength }) => Math.abs(strength) >= 0.1);
    const told = toldWaves(run, 1);
    expect(told).toEqual(all.filter(({ arrival }) => arrival! >= -232 && arrival! <= 74));
    expect(told.length).toBeLessThan(all.length);
  });
});

describe('crank angles', () => {
  it('have round steps, a real minus sign, and the dead centres by name', () => {
    expect(angleTicks({ from: -250, to: 260 }, 9)).toEqual([-240, -180, -120, -60, 0, 60, 120, 180, 240]);
    expect(angleText(-14.2)).toBe('−14°');
    expect(angleText(-0.2)).toBe('0°');
    expect([-360, -180, 0, 180, 360, 90].map(deadCentre)).toEqual(['fires', 'BDC', 'TDC', 'BDC', 'fires', null]);
  });
});
