/** Where the pressure at the valve comes from, in gas whose waves are made up so that the answer is known; weak, so that they add. */
import { describe, expect, it } from 'vitest';
import { differenceWords, sourcesWords } from '../../../src/pulse/forecast/sourceWords';
import { traceBack } from '../../../src/pulse/forecast/traceBack';
import { burntGamma, burntSound, fieldOf } from '../../../src/pulse/forecast/waveField';
import { overlapSources } from '../../../src/pulse/forecast/waveSources';
import { boreOf } from '../../../src/pulse/forecast/waveTapers';
import type { GasPath } from '../../../src/pulse/path/types';
import { answerOf, ENGINE, pathPipe, pictureOf, type StateAt } from './invented';

const RPM = 6000;
const REST = ENGINE.air.pressure;
const SOUND = burntSound(900);
/** Crank degrees that sound takes. */
const degrees = (metres: number) => (6 * RPM * metres) / SOUND;
/** Middle of the overlap. */
const MIDDLE = -2;

/** A pulse about this angle, 40° wide, of so much, Pa; of every cycle. */
const pulseAt =
  (angle: number, high = 400) =>
  (at: number): number => {
    const off = ((((at - angle) % 720) + 1080) % 720) - 360;
    return Math.abs(off) < 20 ? high * Math.cos((Math.PI * off) / 40) ** 2 : 0;
  };

/** p = f + g and ρ c u = f − g, as weak waves have it. */
function stateOf(onward: number, back: number) {
  const impedance = (burntGamma(900) * REST) / SOUND;
  return { pressure: REST + onward + back, velocity: (onward - back) / impedance };
}

/** @param apart degrees from one cylinder's firing to the next */
const runOf = (path: GasPath, at: StateAt, cylinders = [1], apart = 120) => ({
  engine: { ...ENGINE, cylinders, fires: cylinders.map((_, k) => k * apart), firingOrder: cylinders },
  path,
  answer: answerOf(RPM, pictureOf(path, at)),
});

const onePipe = (length: number): GasPath => ({
  title: 'one pipe',
  pipes: [pathPipe('p1', 'primary', length, 0.04)],
  ends: [{ kind: 'open', at: ['p1', 'finish'] }],
  valves: [{ cylinder: 1, pipe: 'p1', share: 1 }],
});

/** Each of several cylinders through a joint into one pipe without end. */
const joined = (cylinders: readonly number[], bore: number): GasPath => {
  const ids = cylinders.map((id) => `p${id}`);
  return {
    title: 'joined',
    pipes: [...ids.map((id) => pathPipe(id, 'primary', 0.6, 0.04)), pathPipe('t', 'tailpipe', 0.4, bore)],
    ends: [
      { kind: 'junction', at: [...ids.map((id) => [id, 'finish'] as const), ['t', 'start']], model: 'equal-pressure' },
      { kind: 'through', at: ['t', 'finish'] },
    ],
    valves: cylinders.map((cylinder) => ({ cylinder, pipe: `p${cylinder}`, share: 1 })),
  };
};

describe('one pipe with an open end', () => {
  const length = 0.9;
  /** It leaves so that it comes back at the middle of the overlap. */
  const leaves = MIDDLE - degrees(2 * length);
  const field =
    (sent: (at: number) => number): StateAt =>
    (_, x, angle) =>
      stateOf(sent(angle - degrees(x)), -sent(angle - degrees(2 * length - x)));

  it('has its suction from the own pulse by the mouth, and tells when it left', () => {
    const found = overlapSources(runOf(onePipe(length), field(pulseAt(leaves, 1000))), 1)!;
    const [first] = found.parts;
    expect(first).toMatchObject({ from: 1, taper: false, turn: { kind: 'mouth', pipe: 'p1' } });
    expect(found.toward).toBeLessThan(-400);
    expect(first!.pressure / found.toward).toBeGreaterThan(0.97);
    expect(first!.pressure / found.toward).toBeLessThan(1.03);
    expect(Math.abs(first!.left - leaves)).toBeLessThan(1);
    expect(first!.sent).toBeGreaterThan(400);
    expect(first!.legs.map(({ pipe, direction }) => `${pipe} ${direction}`)).toEqual(['p1 1', 'p1 -1']);
    expect(Math.abs(found.rest)).toBeLessThan(0.03 * Math.abs(found.toward));
  });

  it('says so in words, with its share', () => {
    // So strong that a few per cent no longer add.
    const run = runOf(onePipe(length), field(pulseAt(leaves, 8000)));
    expect(sourcesWords(run, 1, overlapSources(run, 1)!)).toMatch(
      /^In the overlap the waves that come to the exhaust valve lower its pressure by \d+ kPa\. What lowers it: 9\d % \(\d+ kPa\) its own pulse, sent back from the pipe’s mouth as suction \(it left about \d+° after the valve opened\)\.$/,
    );
  });

  it('tells what the port holds beside it: twice as much is the valve sending it back, more is the cylinder’s own', () => {
    const run = runOf(onePipe(length), field(pulseAt(leaves, 8000)));
    const found = overlapSources(run, 1)!;
    const held = { exhaustPort: 9e4, intakePort: 9e4, exhaustFlow: 0, intakeFlow: 0 };
    const words = (times: number) => sourcesWords(run, 1, found, { ...held, offMean: times * found.toward });
    expect(words(1.7)).toMatch(
      /by \d kPa; the valve, nearly shut, sends them back, so the port is \d kPa below its mean\. What lowers/,
    );
    expect(words(4)).toMatch(
      /by \d kPa; the port is \d+ kPa below its mean: the cylinder sends out less then than on average\. W/,
    );
    expect(words(1)).toMatch(/lower its pressure by \d kPa\. What lowers/);
  });

  it('tells where the port holds the other of what the waves do: that is the cylinder’s own', () => {
    const run = runOf(onePipe(length), field(pulseAt(leaves, 8000)));
    const found = overlapSources(run, 1)!;
    const held = { exhaustPort: 9e4, intakePort: 9e4, exhaustFlow: 0, intakeFlow: 0 };
    const words = (offMean: number) => sourcesWords(run, 1, found, { ...held, offMean });
    expect(words(9000)).toMatch(
      /lower its pressure by \d kPa; the port is 9 kPa above its mean all the same: the cylinder sends out more then than on average\. W/,
    );
    expect(words(1000)).toMatch(/lower its pressure by \d kPa\. What lowers/);
  });

  it('claims nothing of a pulse that comes when the overlap is over', () => {
    const late = overlapSources(runOf(onePipe(length), field(pulseAt(leaves + 60, 4000))), 1)!;
    // The lull alone: what its mean over the cycle leaves.
    expect(Math.abs(late.toward)).toBeLessThan(200);
  });

  it('leaves untold what areas do not explain: an echo twice as strong as the pulse', () => {
    const sent = pulseAt(leaves, 2000);
    const at: StateAt = (_, x, angle) => stateOf(sent(angle - degrees(x)), -2 * sent(angle - degrees(2 * length - x)));
    const run = runOf(onePipe(length), at);
    const found = overlapSources(run, 1)!;
    expect(found.rest / found.toward).toBeGreaterThan(0.45);
    expect(found.rest / found.toward).toBeLessThan(0.55);
    expect(sourcesWords(run, 1, found)).toMatch(/(4[5-9]|5[0-5]) % of all this could not be traced\.$/);
  });
});

describe('a joint', () => {
  it.each([
    [0.06, 'suction'],
    [0.03, 'pressure'],
  ])('to a pipe of %s m sends the own pulse back as %s', (bore) => {
    const path = joined([1], bore);
    const r = (0.04 ** 2 - bore ** 2) / (0.04 ** 2 + bore ** 2);
    const leaves = MIDDLE - degrees(1.2);
    const sent = pulseAt(leaves, 4000);
    const run = runOf(path, (pipe, x, angle) =>
      pipe === 'p1'
        ? stateOf(sent(angle - degrees(x)), r * sent(angle - degrees(1.2 - x)))
        : stateOf((1 + r) * sent(angle - degrees(0.6 + x)), 0),
    );
    const found = overlapSources(run, 1)!;
    const [first] = found.parts;
    expect(first).toMatchObject({ from: 1, turn: { kind: 'junction', pipe: 'p1' } });
    expect(first!.pressure < 0).toBe(r < 0);
    expect(first!.pressure / found.toward).toBeGreaterThan(0.95);
    expect(first!.pressure / found.toward).toBeLessThan(1.05);
  });

  /** Cylinder 2 fires 120° later: in its own degrees the pulse left 120° earlier. */
  const leaves = MIDDLE - degrees(1.2);
  const acrossOf = (high: number) => {
    const [own, tail] = [0.04 ** 2, 0.05 ** 2];
    const through = (2 * own) / (2 * own + tail);
    const sent = pulseAt(leaves, high);
    const at: StateAt = (pipe, x, angle) => {
      if (pipe === 'p2') return stateOf(sent(angle - degrees(x)), (through - 1) * sent(angle - degrees(1.2 - x)));
      if (pipe === 'p1') return stateOf(0, through * sent(angle - degrees(1.2 - x)));
      return stateOf(through * sent(angle - degrees(0.6 + x)), 0);
    };
    const run = runOf(joined([1, 2], 0.05), at, [1, 2]);
    return { ...run, name: `${high}`, sources: overlapSources(run, 1)! };
  };

  it('lets another cylinder’s pulse across', () => {
    const { toward, parts } = acrossOf(2000).sources;
    const [first] = parts;
    expect(first).toMatchObject({ from: 2, turn: { pipe: 'p1' } });
    expect(first!.pressure / toward).toBeGreaterThan(0.95);
    expect(first!.pressure / toward).toBeLessThan(1.05);
    // Waves within a degree are followed on as one, at each of both pipes.
    expect(Math.abs(first!.left - (leaves - 120))).toBeLessThan(2);
    expect(first!.legs.map(({ pipe, direction }) => `${pipe} ${direction}`)).toEqual(['p2 1', 'p1 -1']);
  });

  it('is told in words: whose pulse came across, and that it tells two exhausts apart', () => {
    const [strong, still] = [acrossOf(15_000), acrossOf(0)];
    expect(sourcesWords(strong, 1, strong.sources)).toContain(
      ' cylinder 2’s pulse, which comes across at the tailpipe as pressure',
    );
    expect(still.sources.parts).toEqual([]);
    expect(differenceWords(still, strong, 1)).toMatch(
      /cylinder 2’s pulse, straight across, raises the pressure by \d kPa on “15000” and hardly changes it on “0”/,
    );
    expect(differenceWords(still, still, 1)).toBe('');
  });

  it('has the own pulse back from the shut valve of another cylinder', () => {
    const path = joined([1, 2], 0.05);
    const [own, tail] = [0.04 ** 2, 0.05 ** 2];
    const through = (2 * own) / (2 * own + tail);
    // Into pipe 2, back from its shut valve, and across: 4 × 0.6 m.
    const leaves = MIDDLE - degrees(2.4);
    const sent = pulseAt(leaves, 8000);
    const at = (metres: number, angle: number) => sent(angle - degrees(metres));
    const run = runOf(
      path,
      (pipe, x, angle) => {
        if (pipe === 'p2')
          return stateOf(
            through * at(1.2 + x, angle),
            through * at(1.2 - x, angle) + through * (through - 1) * at(2.4 - x, angle),
          );
        if (pipe === 'p1')
          return stateOf(at(x, angle), (through - 1) * at(1.2 - x, angle) + through * through * at(2.4 - x, angle));
        return stateOf(through * at(0.6 + x, angle) + through * through * at(1.8 + x, angle), 0);
      },
      [1, 2],
      240,
    );
    const found = overlapSources(run, 1)!;
    const [first] = found.parts;
    expect(first).toMatchObject({ from: 1, turn: { pipe: 'p1' } });
    expect(first!.pressure / found.toward).toBeGreaterThan(0.9);
    expect(first!.pressure / found.toward).toBeLessThan(1.1);
    expect(first!.legs.map(({ pipe, direction }) => `${pipe} ${direction}`)).toEqual([
      'p1 1',
      'p2 -1',
      'p2 1',
      'p1 -1',
    ]);
  });
});

/** The path with cylinder 1's pipe so long, and so wide from its cone on. */
const coned = (path: GasPath, length: number, from: number, to: number): GasPath => {
  const [first, ...others] = path.pipes;
  const diameter = [
    [0, 0.04],
    [from, 0.04],
    [to, 0.06],
    [length, 0.06],
  ] as const;
  return { ...path, pipes: [{ ...first!, length, diameter }, ...others] };
};

it('all that comes is shared out, whatever runs in the pipes', () => {
  const wave = (k: number, at: number) => 4000 * Math.sin(((k + 1) * at * Math.PI) / 360 + k);
  const at: StateAt = (pipe, x, angle) => {
    const k = ['p1', 'p2', 't'].indexOf(pipe);
    return stateOf(wave(k, angle - degrees(x)), wave(k + 3, angle + degrees(x)));
  };
  const run = runOf(coned(joined([1, 2], 0.05), 0.6, 0.2, 0.5), at, [1, 2], 360);
  const { toward, parts, small, rest } = overlapSources(run, 1)!;
  expect(new Set(parts.map(({ taper }) => taper))).toEqual(new Set([true, false]));
  expect(parts.reduce((sum, { pressure }) => sum + pressure, small + rest)).toBeCloseTo(toward, 6);
});

it('what came into the pipe at its finish, and from the shut valve to a taper and back, came from the finish', () => {
  const [length, taper] = [2.5, 1.96];
  const path = coned(joined([1, 2], 0.05), length, taper - 0.1, taper + 0.1);
  // Through pipe 2 and pipe 1 to its valve, which is shut by then, and from the taper back.
  const sent = pulseAt(MIDDLE - degrees(0.6 + length + 2 * taper), 8000);
  const at = (metres: number, angle: number) => sent(angle - degrees(metres));
  const field: StateAt = (pipe, x, angle) => {
    if (pipe === 't') return {};
    if (pipe === 'p2') return stateOf(at(x, angle), 0);
    const echo = x < taper ? -0.3 * at(0.6 + length + 2 * taper - x, angle) : 0;
    return stateOf(0.6 * at(0.6 + length + x, angle), 0.6 * at(0.6 + length - x, angle) + echo);
  };
  const [first] = overlapSources(runOf(path, field, [1, 2], 360), 1)!.parts;
  expect(first!.legs.map(({ pipe, direction }) => `${pipe} ${direction}`)).toEqual(['p2 1', 'p1 -1', 'p1 1', 'p1 -1']);
  expect(first).toMatchObject({ from: 2, turn: { pipe: 'p1' }, taper: false });
});

describe('the ways back', () => {
  it('take l / (c − u) against the stream and l / (c + u) with it', () => {
    const path = onePipe(0.8);
    const field = fieldOf(pictureOf(path, () => ({ velocity: 120 })));
    const time = (direction: 1 | -1) => {
      const leg = traceBack(field, RPM, 'p1', direction, direction > 0 ? 0.8 : 0, 40)!;
      return leg.angles.at(-1)! - leg.angles[0]!;
    };
    expect(time(1)).toBeCloseTo((6 * RPM * 0.8) / (SOUND + 120), 3);
    expect(time(-1)).toBeCloseTo((6 * RPM * 0.8) / (SOUND - 120), 3);
  });

  it('find none against gas that is faster than sound', () => {
    const field = fieldOf(pictureOf(onePipe(0.8), () => ({ velocity: 1.02 * SOUND })));
    expect(traceBack(field, RPM, 'p1', -1, 0, 40)).toBeNull();
  });

  it('meet a cone’s √area at each place', () => {
    const path = onePipe(0.5);
    const cone = {
      ...path.pipes[0]!,
      diameter: [
        [0, 0.04],
        [0.2, 0.04],
        [0.5, 0.06],
      ] as const,
    };
    const { root, tapers } = boreOf({ ...path, pipes: [cone] }, 'p1');
    expect(root(0.1)).toBeCloseTo(Math.sqrt(Math.PI / 4) * 0.04, 12);
    expect(root(0.35)).toBeCloseTo(Math.sqrt(Math.PI / 4) * 0.05, 12);
    expect(tapers).toEqual([{ middle: 0.35, from: 0.2, to: 0.5 }]);
  });
});
