/** Waves followed through gas whose every state is known, against the closed forms of their travel times. */
import { describe, expect, it } from 'vitest';
import { twoWaves } from '../../../src/pulse/forecast/superposition';
import { traceWave } from '../../../src/pulse/forecast/traceWave';
import { burntGamma, burntSound, fieldOf } from '../../../src/pulse/forecast/waveField';
import { primarySweep, wavePaths } from '../../../src/pulse/forecast/wavePath';
import { routeOf } from '../../../src/pulse/forecast/waveRoute';
import { waitOf } from '../../../src/pulse/forecast/waveWait';
import { waveWords } from '../../../src/pulse/forecast/waveWords';
import { holeFor } from '../../../src/pulse/path/tailpipe';
import type { GasPath } from '../../../src/pulse/path/types';
import { flowValue, sourceOf } from '../../reference/flow';
import { answerOf, ENGINE, fourIntoOne, fourTwoOne, pathPipe, pictureOf, type StateAt, traceOf } from './invented';

const RPM = 6000;
/** Crank degrees of so many seconds. */
const degrees = (seconds: number) => 6 * RPM * seconds;
const [there, back] = [
  { pipe: 'p1', direction: 1 },
  { pipe: 'p1', direction: -1 },
] as const;
const runOf = (path: GasPath, at: StateAt, rpm = RPM) => ({
  engine: ENGINE,
  path,
  answer: answerOf(rpm, pictureOf(path, at)),
});

describe('a wave through known gas', () => {
  const path = fourIntoOne(0.8, 0.5);
  const trace = (at: StateAt, legs = [there, back] as Parameters<typeof traceWave>[2], start = -232) =>
    traceWave(fieldOf(pictureOf(path, at)), RPM, legs, start);

  it('takes 2 l / c through gas at rest', () => {
    const found = trace(() => ({ temperature: 900 }));
    expect(found.arrival! + 232).toBeCloseTo(degrees(1.6 / burntSound(900)), 5);
    expect(found.sound).toBeCloseTo(burntSound(900), 5);
    expect(found.length).toBeCloseTo(1.6, 12);
  });

  it('takes l / (c + u) + l / (c − u) through gas that streams', () => {
    const c = burntSound(900);
    const found = trace(() => ({ velocity: 150 }));
    expect(found.arrival! + 232).toBeCloseTo(degrees(0.8 / (c + 150) + 0.8 / (c - 150)), 5);
    const turned = found.legs[1]!.angles[0]!;
    expect(turned + 232).toBeCloseTo(degrees(0.8 / (c + 150)), 5);
  });

  it('takes the sum of both parts where half of the pipe is hotter', () => {
    const found = trace((_, x) => ({ temperature: x < 0.4 ? 1200 : 700 }));
    const sum = 0.8 / burntSound(1200) + 0.8 / burntSound(700);
    // The picture is linear across the one cell that holds the step.
    expect(Math.abs(found.arrival! + 232 - degrees(sum))).toBeLessThan(0.05);
    const one = trace(() => ({ temperature: 1200 })).arrival!;
    const other = trace(() => ({ temperature: 700 })).arrival!;
    expect(found.arrival!).toBeGreaterThan(one + 5);
    expect(found.arrival!).toBeLessThan(other - 5);
  });

  it('runs faster once the gas has grown hotter with time, and not before', () => {
    // Sound falls linearly with temperature's root; here it is one value until −200° and another after.
    const found = trace((_, __, angle) => ({ temperature: angle < -200 ? 700 : 1100 }));
    const [slow, fast] = [burntSound(700), burntSound(1100)];
    // Rows are 2° apart and linear between: the change is centred at −201°.
    const first = (31 / (6 * RPM)) * slow;
    expect(Math.abs(found.arrival! + 201 - degrees((1.6 - first) / fast))).toBeLessThan(0.3);
  });

  it('goes on where the cycle ends: the picture begins again there', () => {
    const at: StateAt = (_, x, angle) => ({ temperature: 900 + 200 * Math.sin((angle * Math.PI) / 180) * x });
    const now = trace(at, [there, back], 330);
    const before = trace(at, [there, back], 330 - 720);
    expect(now.arrival! - before.arrival!).toBeCloseTo(720, 6);
  });

  it('never comes back against gas that is faster than sound', () => {
    const found = trace(() => ({ velocity: burntSound(900) * 1.01 }));
    expect(found.arrival).toBeNull();
    expect(found.legs).toHaveLength(2);
  });

  it('is told to stand where gas streams against it nearly as fast as sound', () => {
    const c = burntSound(900);
    // For 40° the collector's stream is 0.97 of sound; else gas is at rest.
    const fast: StateAt = (pipe, _, angle) => ({
      velocity: pipe === 'c' && angle > -200 && angle < -160 ? 0.97 * c : 0,
    });
    const legs = (['p1', 'c'] as const).map((pipe) => ({ pipe, direction: 1 }) as const);
    const down = legs.toReversed().map(({ pipe }) => ({ pipe, direction: -1 }) as const);
    const round = trace(fast, [...legs, ...down], -265);
    const wait = waitOf(round, RPM)!;
    expect(wait.pipe).toBe('c');
    expect(wait.degrees).toBeGreaterThan(25);
    expect(wait.degrees).toBeLessThan(41);
    expect(
      waitOf(
        trace(() => ({}), [...legs, ...down]),
        RPM,
      ),
    ).toBeNull();
  });

  it('is told which pipe the picture lacks', () => {
    expect(() => trace(() => ({}), [{ pipe: 'nowhere', direction: 1 }])).toThrow('"nowhere"');
  });
});

describe('the ways of a cylinder’s wave', () => {
  const still: StateAt = () => ({ temperature: 900 });
  const c = burntSound(900);

  it('turn at each joint and at the mouth, as far from the valve as the pipes are long', () => {
    const paths = wavePaths(runOf(fourTwoOne(0.4, 0.5, 0.6), still), 1, 'opening');
    const own = paths.filter(({ from }) => from === 1);
    expect(own.map(({ turn }) => [turn.pipe, turn.kind])).toEqual([
      ['p1', 'junction'],
      ['s1', 'junction'],
      ['t', 'mouth'],
    ]);
    [0.8, 1.8, 3].forEach((length, k) => {
      expect(own[k]!.length).toBeCloseTo(length, 9);
      expect(own[k]!.arrival! + 232).toBeCloseTo(degrees(length / c), 4);
    });
    expect(own[2]!.legs.map(({ pipe, direction }) => `${pipe}${direction}`)).toEqual([
      ...['p11', 's11', 't1'],
      ...['t-1', 's1-1', 'p1-1'],
    ]);
  });

  it('come back as suction from a larger area, in the part that linear acoustics gives', () => {
    const [first] = wavePaths(runOf(fourIntoOne(), still), 1);
    const [own, others] = [0.04 ** 2, 3 * 0.04 ** 2 + 0.06 ** 2];
    expect(first!.strength).toBeCloseTo((own - others) / (own + others), 12);
    const narrow: GasPath = {
      ...fourIntoOne(),
      pipes: [pathPipe('p1', 'primary', 0.5, 0.04), pathPipe('t', 'tailpipe', 0.5, 0.03)],
      ends: [
        {
          kind: 'junction',
          at: [
            ['p1', 'finish'],
            ['t', 'start'],
          ],
          model: 'equal-pressure',
        },
        { kind: 'open', at: ['t', 'finish'] },
      ],
      valves: [{ cylinder: 1, pipe: 'p1', share: 1 }],
    };
    const single = { ...ENGINE, cylinders: [1], fires: [0], firingOrder: [1] };
    const [pressed, mouth] = wavePaths({ ...runOf(narrow, still), engine: single }, 1);
    expect(pressed!.strength).toBeCloseTo((0.04 ** 2 - 0.03 ** 2) / (0.04 ** 2 + 0.03 ** 2), 12);
    // What the narrower pipe lets through both ways, and the mouth sends back as its opposite.
    expect(mouth!.strength).toBeCloseTo(-(1 - pressed!.strength ** 2), 12);
  });

  it('are not followed on once the valve has sent them out again: it is open, and how it sends them is not known', () => {
    // At 2000 rpm sound runs through this pipe many times while the valve is open.
    const own = wavePaths(runOf(fourIntoOne(0.4, 0.5), still, 2000), 1).filter(({ from }) => from === 1);
    expect(own.map(({ turn }) => turn.pipe)).toEqual(['p1', 'c']);
    for (const { legs } of own)
      expect(legs.filter(({ pipe, direction }) => pipe === 'p1' && direction < 0)).toHaveLength(1);
  });

  it('come back from a silencer by what its plate resists the stream', () => {
    const mouthOf = (loss: number, mach: number) => {
      const plain = fourIntoOne(0.8, 0.5);
      const full = (Math.PI / 4) * 0.06 ** 2;
      const ends = plain.ends.map((end) =>
        end.kind === 'open' ? { ...end, area: holeFor(full, loss), dischargeCoefficient: 1 } : end,
      );
      const run = runOf({ ...plain, ends }, (pipe) => ({ velocity: pipe === 'c' ? mach * c : 0 }));
      return wavePaths(run, 1, 'opening').find(({ from, turn }) => from === 1 && turn.kind === 'mouth');
    };
    const share = wavePaths(runOf(fourIntoOne(0.8, 0.5), still), 1).find(({ turn }) => turn.kind === 'mouth')!.strength;
    // r = (K M − 1) / (K M + 1): suction from little of it, pressure from much.
    for (const [loss, mach] of [
      [2, 0.1],
      [20, 0.15],
    ] as const) {
      const r = (loss * mach - 1) / (loss * mach + 1);
      expect(mouthOf(loss, mach)!.strength).toBeCloseTo(-share * r, 4);
    }
    expect(mouthOf(2, 0.1)!.strength).toBeLessThan(0);
    expect(mouthOf(20, 0.15)!.strength).toBeGreaterThan(0);
    // Where K M is 1 nothing comes back.
    expect(mouthOf(10, 0.1)).toBeUndefined();
    expect(waveWords(runOf(fourIntoOne(), still), mouthOf(2, 0.1)!)).toContain(
      'The suction that comes back from the collector’s mouth through its silencer',
    );
  });

  it('come from the other cylinders when these fire', () => {
    const across = wavePaths(runOf(fourTwoOne(0.4, 0.5, 0.6), still), 1, 'opening').filter(({ from }) => from !== 1);
    expect(across.map(({ from }) => from)).toEqual([2, 3, 4]);
    // Cylinder 4 shares the first joint and fires 360° away; 3 is met at the second and fires 180° later.
    const [, three, four] = across;
    expect(four!.length).toBeCloseTo(0.8, 9);
    expect(four!.arrival!).toBeCloseTo(-232 + 360 + degrees(0.8 / c), 4);
    expect(three!.length).toBeCloseTo(1.8, 9);
    expect(three!.arrival!).toBeCloseTo(-232 + 180 + degrees(1.8 / c), 4);
    expect(four!.strength).toBeGreaterThan(0);
  });

  it('are the same for each cylinder where each sees the same in its own degrees', () => {
    const at: StateAt = (pipe, x, angle) => {
      const own = angle - (ENGINE.fires[Number(pipe.slice(1)) - 1] ?? 0);
      return { temperature: 900 + 150 * Math.cos((own * Math.PI) / 180) * (1 - x), velocity: 40 };
    };
    const run = runOf(fourIntoOne(), at);
    const [one, three] = [1, 3].map((cylinder) => wavePaths(run, cylinder, 'opening')[0]!);
    expect(three!.arrival!).toBeCloseTo(one!.arrival!, 3);
  });

  it('begin at the highest pressure beside the valve where that is asked', () => {
    const at: StateAt = (pipe, _, angle) => ({
      pressure: 1e5 + (pipe === 'p1' ? 8e4 * Math.exp(-(((angle + 190) / 15) ** 2)) : 0),
    });
    const run = runOf(fourIntoOne(), at);
    const [peak] = wavePaths(run, 1, 'peak');
    expect(peak!.start).toBe(-190);
    // At the valve itself, where its traces are kept.
    const trace = traceOf(1, { exhaustPort: (angle) => 1e5 + 8e4 * Math.exp(-(((angle + 206) / 15) ** 2)) });
    const kept = { ...run, answer: { ...run.answer, traces: [trace] } };
    expect(wavePaths(kept, 1, 'peak')[0]!.start).toBe(-206);
  });

  it('tell how far from the overlap’s middle they come, and at what speed they would meet it', () => {
    const run = runOf(fourIntoOne(0.8, 0.5), still);
    for (const wave of wavePaths(run, 1, 'opening')) {
      expect(wave.phase!).toBeCloseTo(wave.arrival! + 2, 9);
      expect(wave.inOverlap).toBe(wave.arrival! >= -18 && wave.arrival! <= 14);
    }
    const speedFor = (rpm: number) => wavePaths(runOf(fourIntoOne(0.8, 0.5), still, rpm), 1, 'opening')[0]!.tunedRpm;
    // The way takes 1.6 m / c whatever the speed: it meets −2° after 230°.
    const tuned = ((230 / 6) * c) / 1.6;
    for (const rpm of [0.88 * tuned, tuned, 1.14 * tuned]) expect(speedFor(rpm)! / tuned).toBeCloseTo(1, 4);
    // From afar nothing is told: real gas would be another by then.
    for (const rpm of [0.5 * tuned, 0.85 * tuned, 1.2 * tuned]) expect(speedFor(rpm)).toBeNull();
    expect(primarySweep(6000, -232, -232, 0)).toBeNull();
  });

  it(`have the tuning number of the source at its worked numbers: ${sourceOf('ex.fukuda_izumi_1965')}`, () => {
    const { Q, worked } = flowValue<{ Q: number; worked: { l: number } }>('ex.fukuda_izumi_1965');
    // c = 500 m/s, 240° open, 6000 rpm.
    const path: GasPath = {
      title: 'sketch',
      pipes: [pathPipe('p1', 'primary', worked.l, 0.04)],
      ends: [{ kind: 'open', at: ['p1', 'finish'] }],
      valves: [{ cylinder: 1, pipe: 'p1', share: 1 }],
    };
    const engine = {
      ...ENGINE,
      cylinders: [1],
      fires: [0],
      firingOrder: [1],
      exhaustValve: { ...ENGINE.exhaustValve, lifts: [[-230, 0] as const, [-110, 0.008] as const, [10, 0] as const] },
    };
    let [low, high] = [300, 1500];
    for (let k = 0; k < 60; k++)
      [low, high] = burntSound((low + high) / 2) < 500 ? [(low + high) / 2, high] : [low, (low + high) / 2];
    const [wave] = wavePaths({ ...runOf(path, () => ({ temperature: low })), engine }, 1, 'opening');
    expect(wave!.tuning!).toBeCloseTo(Q, 4);
    // Their pipe stood alone: of others it is not told.
    expect(wavePaths(runOf(fourIntoOne(), still), 1).map(({ tuning }) => tuning)).toEqual(Array(5).fill(null));
  });

  it('are none without a picture', () => {
    expect(wavePaths({ engine: ENGINE, path: fourIntoOne(), answer: answerOf(RPM, null) }, 1)).toEqual([]);
  });
});

describe(`what joints send back and let through: ${sourceOf('ac.junction')}`, () => {
  const cases = Object.entries(
    flowValue<Record<string, { S: readonly number[]; T: number; R: number }>>('ac.junction'),
  );
  it.each(cases)('%s', (_, { S, T, R }) => {
    const pipes = S.map((area, k) => pathPipe(`q${k}`, k === 1 ? 'collector' : 'primary', 0.5, 0.04 * Math.sqrt(area)));
    const at = pipes.map(({ id }, k) => [id, k === 1 ? 'start' : 'finish'] as const);
    const path: GasPath = {
      title: 'sketch',
      pipes,
      ends: [
        { kind: 'junction', at, model: 'equal-pressure' },
        { kind: 'open', at: ['q1', 'finish'] },
      ],
      valves: [{ cylinder: 1, pipe: 'q0', share: 1 }],
    };
    const [joint, mouth] = routeOf(path, 1).turns;
    expect(joint!.back).toBeCloseTo(R, 5);
    expect(joint!.on).toBeCloseTo(T, 5);
    expect(mouth).toMatchObject({ kind: 'mouth', back: -1 });
  });
});

describe('the two waves over each other', () => {
  it('leave nothing running back where one simple wave runs into gas at rest', () => {
    const gamma = burntGamma(1000);
    const rise = 1.3;
    // In a simple wave u = 2 c₀ (X − 1) / (γ − 1), and c = X c₀.
    const x = rise ** ((gamma - 1) / (2 * gamma));
    const u = (2 * (burntSound(1000) / x) * (x - 1)) / (gamma - 1);
    const { onward, back } = twoWaves(1e5 * rise, u, 1000, 1e5);
    expect(onward).toBeCloseTo(1.3e5, 3);
    expect(back).toBeCloseTo(1e5, 3);
    const other = twoWaves(1e5 * rise, -u, 1000, 1e5);
    expect(other.back).toBeCloseTo(1.3e5, 3);
  });

  it('are alike where the gas stands still', () => {
    const { onward, back } = twoWaves(1.2e5, 0, 800, 1e5);
    expect(onward).toBeCloseTo(back, 6);
    expect(onward).toBeGreaterThan(1.05e5);
  });
});

describe('the words for a wave', () => {
  const run = runOf(fourIntoOne(), () => ({}));
  const [wave] = wavePaths(run, 1, 'opening');

  it('say what comes from where, when, and whether that is within the overlap', () => {
    expect(waveWords(run, { ...wave!, arrival: -14, inOverlap: true })).toBe(
      'The suction that comes back from the collector reaches the valve at −14°, within the overlap (−18° to 14°): it helps to draw burnt gas out of the cylinder.',
    );
    expect(waveWords(run, { ...wave!, arrival: -60, inOverlap: false, tunedRpm: 4811 })).toBe(
      'The suction that comes back from the collector reaches the valve at −60°, 42° before the overlap (−18° to 14°); at about 4800 rpm it would meet its middle.',
    );
    expect(waveWords(run, { ...wave!, arrival: 44, inOverlap: false, tunedRpm: 9000 })).toContain(
      '30° after the overlap (−18° to 14°).',
    );
    expect(waveWords(run, { ...wave!, from: 3, strength: 0.4, arrival: 0, inOverlap: true })).toBe(
      'The pressure of cylinder 3 that comes across at the collector reaches the valve at 0°, within the overlap (−18° to 14°): it holds up the burnt gas that leaves the cylinder.',
    );
  });

  it('do not claim what the gas of the run speaks against', () => {
    const within = { ...wave!, from: 3, strength: 0.4, arrival: 0, inOverlap: true };
    expect(waveWords(run, { ...within, carried: -9700 })).toContain(
      'stronger waves outweigh it, all that comes to the valve then is 10 kPa below its mean.',
    );
    expect(waveWords(run, { ...within, carried: 9700 })).toContain('it holds up the burnt gas');
    expect(waveWords(run, { ...within, carried: -300 })).toContain('it holds up the burnt gas');
    // "Back" is said of measured flow alone, and suction draws nothing where gas flows back.
    const means = { exhaustPort: 62_000, offMean: 4000, intakePort: 95_000, exhaustFlow: 0.0088, intakeFlow: 0.009 };
    expect(waveWords(run, within, means)).toContain('holds up the burnt gas, more of which leaves');
    expect(waveWords(run, within, { ...means, exhaustFlow: -0.0051 })).toContain('helps to push gas back');
    expect(waveWords(run, within, { ...means, intakeFlow: -0.0051 })).toContain('helps to push gas back');
    const suction = { ...within, strength: -0.4 };
    expect(waveWords(run, suction, means)).toContain('helps to draw burnt gas out');
    expect(waveWords(run, suction, { ...means, exhaustFlow: -0.0051 })).toContain('flows the wrong way');
    expect(waveWords(run, { ...within, strength: -0.4, carried: 4000 })).toContain('4 kPa above its mean');
  });

  it('say what the way leaves out: a cylinder’s second port', () => {
    const { path } = run;
    const twin = { ...path, valves: [...path.valves, { ...path.valves[0]!, pipe: 'p9' }] };
    expect(waveWords({ ...run, path: twin }, wave!)).toMatch(
      /\. Cylinder 1 has 2 ports: this is the way of the first\.$/,
    );
    expect(waveWords({ ...run, path: twin }, { ...wave!, from: 3 })).not.toContain('ports');
  });

  it('say that none comes back, and that there is no overlap to meet', () => {
    expect(waveWords(run, { ...wave!, arrival: null })).toContain('never reaches the valve');
    const engine = { ...ENGINE, intakeValve: { ...ENGINE.intakeValve, lifts: [[20, 0] as const, [200, 0] as const] } };
    expect(waveWords({ ...run, engine }, wave!)).toContain('the valves have no overlap');
  });
});
