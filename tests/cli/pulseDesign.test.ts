/** `pulse DESIGN` by its tables, its words and its exit codes, with an invented engine. */
import { copyFileSync, existsSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { PulseArguments } from '../../src/cli/pulse/options';
import type { SpeedJob } from '../../src/pulse/forecast/job';
import { inventedTorque } from '../pulse/forecast/fakes';
import { DESIGN, designBench, invented, pulse, UNLAID } from './pulseBench';

const { bench, at, text, table, ask, change } = designBench();

describe('a curve', () => {
  test('is a table of twelve speeds, its peaks, and what it stands on', async () => {
    const { code, out, err } = await ask({ output: ['out.csv', 'out.json'] });
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(
      /^4 cylinders, 83 × 85\.5 mm, laid-out header: 12 speeds followed in [\d.]+ s\n {3}rpm {2}torque N m/,
    );
    expect(out).toMatch(/\n {2}2000 .*\n/);
    expect(out).toMatch(/\n {2}peak torque [\d.]+ N m at \d+0 rpm\n {2}peak power .* kW at 7600 rpm, the last speed/);
    expect(out).toMatch(/\n {2}mean torque [\d.]+ N m from 2000 to 7600 rpm\n/);
    expect(out).toMatch(
      /\nNot calibrated: nothing measured on this engine went in\nAssumed, as nobody gave it \(\d+\): Intake/,
    );
    expect(out).toMatch(
      /\nChecked against theory and published trends, not against this engine\. .*difference between two more/,
    );
    expect(out).toMatch(/\nout\.csv written\nout\.json written\n$/);
    expect(table('out.csv').map(({ rpm }) => Number(rpm))).toHaveLength(12);
    const { speeds, summary, assumed, engine } = JSON.parse(text('out.json'));
    expect([speeds.length, summary.covered, engine.bore]).toEqual([12, [2000, 7600], 0.083]);
    expect(assumed.length).toBeGreaterThan(5);
  });

  test('the same design, the same bytes', async () => {
    await ask({ output: ['one.csv', 'one.json'] });
    await ask({ output: ['two.csv', 'two.json'] });
    expect(text('one.csv')).toBe(text('two.csv'));
    expect(text('one.json')).toBe(text('two.json'));
  });

  test('at speeds that are given, in a band that is given; JSON on standard output', async () => {
    const { code, out } = await ask({ speeds: '5000,3000,4000', band: '3500-4500', json: true });
    expect(code).toBe(0);
    const said = JSON.parse(out);
    expect(said.speeds.map(({ rpm }: { rpm: number }) => rpm)).toEqual([3000, 4000, 5000]);
    expect([said.band, said.summary.covered, said.output]).toEqual([[3500, 4500], [3500, 4500], []]);
    expect((await ask({ speeds: '5', band: '3000-4000' })).out).toMatch(/5 speeds .*\n.*\n {2}3000 .*\n {2}3250 /);
  });

  test('on the cast manifold', async () => {
    expect((await ask({ on: 'cast' })).out).toMatch(/cast manifold: 12 speeds/);
  });

  test('with a speed that fails: its place and why, exit code 1', async () => {
    const fails = invented((job) => (job.rpm === 4000 ? 'density came out as none' : inventedTorque(job)));
    const { code, out } = await ask({ speeds: '3000,4000,5000', output: 'out.csv' }, fails);
    expect(code).toBe(1);
    expect(out).toMatch(/\n {2}4000 +The flow could not be followed beyond 0\.0100000 s: density came out as none/);
    expect(table('out.csv')[1]!.failed).toMatch(/^The flow could not be followed/);
  });

  test('that has not settled: said, exit code 1', async () => {
    const { code, out } = await ask({ speeds: '3000,4000' }, invented(inventedTorque, false));
    expect(code).toBe(1);
    expect(out.match(/not settled\n/g)).toHaveLength(2);
  });

  test('interrupted: what there is is written, exit code 1', async () => {
    const { code, err } = await ask({ speeds: '3000,4000,5000,6000', output: 'out.csv' }, invented(), 2);
    expect([code, err]).toEqual([1, 'evenrun: interrupted with 2 of 4 speeds followed\n']);
    expect(table('out.csv').map(({ failed }) => failed !== '')).toEqual([false, false, true, true]);
  });

  test.each<PulseArguments>([{}, { against: 'cast' }, { imbalance: '20' }])(
    'interrupted before the first answer, %j: what was written before stays',
    async (mode) => {
      writeFileSync(at('keep.csv'), 'kept');
      const { code, err, out } = await ask({ ...mode, speeds: '3000,4000', output: 'keep.csv' }, invented(), 0);
      expect([code, text('keep.csv')]).toEqual([1, 'kept']);
      expect(err).toMatch(/^evenrun: interrupted with 0 of \d speeds followed; nothing is written\n$/);
      expect(out).not.toMatch(/written\n/);
    },
  );

  test('at one speed is no peak; without torque neither', async () => {
    const one = await ask({ speeds: '3000' });
    expect(one.out).toMatch(/: 1 speed followed in/);
    expect(one.out).not.toMatch(/peak/);
    const driven = await ask(
      { speeds: '3000,4000' },
      invented(() => -62),
    );
    expect(driven.out).toMatch(/\n {2}no speed gives torque/);
    expect(driven.out).not.toMatch(/peak/);
  });

  test('calibrated: said, with the factors', async () => {
    const design = JSON.parse(text(DESIGN));
    const name = change('fitted.json', { engine: { ...design.engine, fitted: { flow: 0.95, friction: 1.1 } } });
    expect((await pulse(bench(), [name], {})).out).toMatch(
      /\nCalibrated on a curve measured on this engine: flow × 0\.95, friction × 1\.1\n/,
    );
  });

  test('a fault of the program at one speed is called one, and takes no other speed with it', async () => {
    const broken = invented((job) => {
      if (job.rpm === 4000) throw new TypeError('no such thing');
      return inventedTorque(job);
    });
    const { code, out } = await ask({ speeds: '3000,4000,5000', output: 'out.csv' }, broken);
    expect(code).toBe(1);
    expect(out).toMatch(/\n {2}4000 +A fault of the program, not of the design; please report it: no such thing/);
    expect(table('out.csv').map(({ failed }) => failed !== '')).toEqual([false, true, false]);
  });
});

describe('against', () => {
  test('the cast manifold: the gain at each speed, and in all', async () => {
    const { code, out } = await ask({ against: 'cast', output: 'gain.csv', band: '3000-6000' });
    expect(code).toBe(0);
    expect(out).toMatch(/^4 cylinders.*: laid-out header against cast manifold, 24 speeds/);
    expect(out).toMatch(/\n {2}mean [+-][\d.]+ N m \([+-][\d.]+ %\) within 3000 to 6000 rpm\n/);
    expect(out).not.toMatch(/engines differ/);
    const rows = table('gain.csv');
    expect(rows).toHaveLength(12);
    for (const { before_nm, after_nm, gain_nm } of rows)
      expect(Number(after_nm) - Number(before_nm)).toBeCloseTo(Number(gain_nm), 6);
  });

  test('itself with equal lengths', async () => {
    copyFileSync('public/examples/four-4-1-as-tacked.evenrun.json', at('tacked.json'));
    const { out } = await pulse(bench(), ['tacked.json'], { against: 'equal', json: true });
    const { before, after } = JSON.parse(out);
    expect([before.title, after.title]).toEqual(['laid-out header', 'laid-out header']);
    expect(before.path.title).toBe('laid-out header, lengths equal');
  });

  test('what the other alone stands on is told, beside what both do', async () => {
    const { out } = await ask({ against: 'cast', speeds: '3000,4000' });
    expect(out).toMatch(
      /\nBefore, cast manifold:\n[\s\S]*\nAssumed of this one alone, [^\n]*\(\d+\): Branches of the cast manifold \d+ mm from the flange[\s\S]*\nAfter, /,
    );
  });

  test('interrupted, keeps whole pairs, and of a half one what there is, with why', async () => {
    const { code } = await ask({ against: 'cast', speeds: '3000,4000,5000', output: 'gain.csv' }, invented(), 3);
    expect(code).toBe(1);
    const rows = table('gain.csv');
    expect(rows.map(({ gain_nm }) => gain_nm !== '')).toEqual([true, false, false]);
    expect(rows[1]!.before_nm).not.toBe('');
    expect(rows[1]!.failed).toBe('after: not followed: interrupted');
  });

  test('that has not settled: marked at each speed, and in the table', async () => {
    const { out } = await ask(
      { against: 'cast', speeds: '3000,4000', output: 'g.csv' },
      invented(inventedTorque, false),
    );
    expect(out.match(/ neither settled\n/g)).toHaveLength(2);
    expect(table('g.csv').map(({ before_settled, after_settled }) => before_settled + after_settled)).toEqual([
      'nono',
      'nono',
    ]);
  });

  test('itself, or what covers other cylinders, is refused', async () => {
    await expect(ask({ against: 'header' })).rejects.toThrow(/--against: found "header", which is the very same/);
    await expect(ask({ against: 'cast', on: 'cast' })).rejects.toThrow(/which is the very same/);
    await expect(ask({ against: 'equal', on: 'cast' })).rejects.toThrow(
      /cast manifold, whose lengths are equal already/,
    );
    for (const name of ['v8-both-banks', 'v8-left-bank-4-1'])
      copyFileSync(`public/examples/${name}.evenrun.json`, at(`${name}.json`));
    await expect(pulse(bench(), ['v8-both-banks.json'], { against: 'v8-left-bank-4-1.json' })).rejects.toThrow(
      /exhaust of cylinders 1, 3, 5, 7 beside .*allowed: exhausts of the same cylinders/,
    );
  });

  test('another design whose engine differs too: said plainly', async () => {
    const design = JSON.parse(text(DESIGN));
    change('wide.json', { engine: { ...design.engine, bore: 86 } });
    const { code, out } = await ask({ against: 'wide.json' });
    expect(code).toBe(0);
    expect(out).toMatch(/\nThe engines differ too, in bore.*: what is gained is not of the exhaust alone\n/);
  });
});

describe('a fit', () => {
  const points = [2500, 4000, 5500, 7000].map((rpm) => [rpm, 190]);
  const engine = () => JSON.parse(text(DESIGN)).engine;
  const baselined = (more: object = {}) =>
    change('measured.json', { engine: { ...engine(), baseline: { points, ...more } } });
  /** Torque goes by the factors: half of it by flow, some of it by heat. */
  const answers = invented(
    ({ engine: { flowFactor, walls } }) => 205 * (0.5 + 0.5 * flowFactor) - 10 * (walls.factor - 1),
  );

  test('writes the design with the factors that it found, and says how far off it was and is', async () => {
    const { code, out } = await pulse(bench(), [baselined()], { fit: true, output: 'fitted.evenrun.json' }, answers);
    expect(code).toBe(0);
    expect(out).toMatch(/cast manifold: \d+ speeds followed/);
    expect(out).toMatch(/\n +rpm {2}measured N m {2}fitted N m {2}off by\n {2}2500 +190\.0 /);
    expect(out).toMatch(/\nFitted to 4 points: valve flow × 0\.\d+/);
    expect(out).toMatch(/\nCalibrated on a curve measured on this engine: flow × 0\.\d+/);
    const { fitted, baseline } = JSON.parse(text('fitted.evenrun.json')).engine;
    expect(fitted.flow).toBeLessThan(1);
    expect(baseline.points).toEqual(points);
    expect((await bench().evenrun('check', 'fitted.evenrun.json')).code).toBeLessThan(2);
  });

  test('as JSON has every assumed value and why, as every other answer', async () => {
    const given = { fit: true, output: 'fitted.evenrun.json', json: true };
    const { title, assumed, fitted, output } = JSON.parse((await pulse(bench(), [baselined()], given, answers)).out);
    expect([title, output]).toEqual(['cast manifold', ['fitted.evenrun.json']]);
    expect(fitted).toEqual(JSON.parse(text('fitted.evenrun.json')).engine.fitted);
    for (const one of assumed)
      expect(one).toEqual(expect.objectContaining({ taken: expect.any(String), why: expect.any(String) }));
    expect(assumed.length).toBeGreaterThan(5);
  });

  test('interrupted, writes the best so far beside what was asked for, under a name that says so', async () => {
    const given = { fit: true, output: 'fitted.evenrun.json' };
    const { code, out, err } = await pulse(bench(), [baselined()], given, answers, 17);
    expect(code).toBe(1);
    expect(err).toBe(
      'evenrun: interrupted before the fit was done; the best so far is written to fitted.unfinished.evenrun.json\n',
    );
    expect(out).toMatch(/\nStopped; the best so far to 4 points: valve flow × 0\.\d+/);
    expect(out).toMatch(/\nfitted\.unfinished\.evenrun\.json written\n$/);
    expect(JSON.parse(text('fitted.unfinished.evenrun.json')).engine.fitted.flow).toBeLessThan(1);
    expect(existsSync(at('fitted.evenrun.json'))).toBe(false);
  });

  test.each<[string, (job: SpeedJob) => number, RegExp]>([
    [
      'all factors at their bounds',
      ({ engine }) => 400 + 100 * (engine.flowFactor - 1) - 20 * (engine.walls.factor - 1),
      /all three factors came to their bounds/,
    ],
    [
      'no better than usual',
      ({ rpm }) => 190 + (rpm === 2500 || rpm === 7000 ? 20 : -20),
      /no factors within their bounds are nearer than the usual ones/,
    ],
  ])('that fails says so and writes nothing, over the design neither: %s', async (_, torque, why) => {
    const name = baselined();
    const before = text(name);
    for (const output of ['fitted.evenrun.json', name]) {
      const { code, out, err } = await pulse(bench(), [name], { fit: true, output }, invented(torque));
      expect(code).toBe(1);
      expect(err).toMatch(new RegExp(`^evenrun: the fit failed: ${why.source}; nothing is written\\n$`));
      expect(out).toMatch(/\nNot fitted to 4 points: .*Something else is another than told/);
      expect(out).toMatch(/\nNot calibrated/);
      expect(text(name)).toBe(before);
      expect(existsSync(at('fitted.evenrun.json'))).toBe(false);
    }
  });

  test('interrupted over the design itself, leaves it as it is', async () => {
    const name = baselined();
    const before = text(name);
    const { code } = await pulse(bench(), [name], { fit: true, output: name }, answers, 17);
    expect(code).toBe(1);
    expect(text(name)).toBe(before);
    expect(existsSync(at('measured.unfinished.json'))).toBe(true);
  });

  test('interrupted before anything better than usual was found, writes nothing', async () => {
    const given = { fit: true, output: 'fitted.evenrun.json' };
    const { code, out, err } = await pulse(bench(), [baselined()], given, answers, 13);
    expect(code).toBe(1);
    expect(err).toBe('evenrun: interrupted before the fit was done; nothing is written\n');
    expect(out).toMatch(/\nNot calibrated/);
    expect(
      bench()
        .listing()
        .filter((name) => name.startsWith('fitted')),
    ).toEqual([]);
  });

  test('interrupted before every speed was followed once, writes nothing', async () => {
    const { code, err } = await pulse(bench(), [baselined()], { fit: true, output: 'fitted.evenrun.json' }, answers, 3);
    expect(code).toBe(1);
    expect(err).toMatch(/^evenrun: .*nothing is written\n$/);
    expect(existsSync(at('fitted.evenrun.json'))).toBe(false);
  });

  test('without a measured curve, or a place to write, is refused', async () => {
    await expect(ask({ fit: true, output: 'f.json' })).rejects.toThrow(
      /engine\/baseline: found nothing; allowed: a torque curve/,
    );
    await expect(pulse(bench(), [baselined()], { fit: true })).rejects.toThrow(/-o, --output: say where to write/);
    await expect(pulse(bench(), [baselined()], { fit: true, on: 'cast' })).rejects.toThrow(
      /--on: does not go with --fit/,
    );
  });
});

test('imbalance: what each millimetre costs', async () => {
  const { code, out } = await ask({ imbalance: '20,100', output: ['out.csv'] });
  expect(code).toBe(0);
  expect(out).toMatch(/\n {2}each millimetre of imbalance costs 0\.05 N m of mean torque\n/);
  expect(out).toMatch(/\n +imbalance mm +mean N m +cost N m *\n +0 +[\d.]+ *\n +20 +[\d.]+ +\+1\.00 *\n/);
  expect(table('out.csv')).toHaveLength(36);
  expect(table('out.csv').map(({ settled }) => settled)).toEqual(Array(36).fill('yes'));
});

test('imbalance that gains has one sign, and what has not settled is marked', async () => {
  const gains = invented((job) => 300 - inventedTorque(job), false);
  const { code, out } = await ask({ imbalance: '20,100', output: 'out.csv' }, gains);
  expect(code).toBe(1);
  expect(out).toMatch(/ -1\.00 {2}12 not settled\n/);
  expect(out).toMatch(/each millimetre of imbalance costs -0\.05 N m of mean torque: it gains\n/);
  expect(table('out.csv').map(({ settled }) => settled)).toEqual(Array(36).fill('no'));
});

describe('refused, with nothing written', () => {
  const refused = async (args: string[], message: RegExp) => {
    const before = bench().listing();
    const { code, out, err } = await bench().evenrun('pulse', ...args);
    expect(err).toMatch(/^evenrun: [^\n]+\n$/);
    expect(err).toMatch(message);
    expect(err).not.toMatch(/fault of the program/);
    expect([code, out]).toEqual([2, '']);
    expect(bench().listing()).toEqual(before);
  };

  test.each<[string[], RegExp]>([
    [[], /pulse: give it a design, evenrun pulse DESIGN \[-o OUT\.csv\]; or a rig of pipes, evenrun pulse --rig/],
    [['none.json'], /none\.json: no such file/],
    [[DESIGN, DESIGN], /found "four\.evenrun\.json" besides the design/],
    [
      [UNLAID],
      /unlaid\.evenrun\.json: runners\/r1\/points: found nothing: r1, r2, r3, r4 are not laid out; .*exhaust\/sketch/,
    ],
    [[DESIGN, '--on', 'sketch'], /exhaust\/sketch: found nothing/],
    [[DESIGN, '--on', 'bench'], /--on: found "bench"; allowed: header, cast, sketch/],
    [[DESIGN, '--speeds', 'fast'], /--speeds: found "fast"; allowed: a number/],
    [[DESIGN, '--speeds', '2000-7000'], /--speeds: found "2000-7000"; allowed: .*from where to where is --band/],
    [[DESIGN, '--speeds', '2'], /--speeds: found "2"; allowed: a whole number from 3 to 60/],
    [[DESIGN, '--speeds', '100'], /found "100"; allowed: .* 3 to 60, how many; or single speeds from 200 to 20000 rpm/],
    [
      [DESIGN, '--imbalance', '20', '--speeds', '6000'],
      /--speeds: found 6000 rpm alone; allowed: at least two speeds within 2000 to 7600 rpm/,
    ],
    [
      [DESIGN, '--study', '--speeds', '6000'],
      /--speeds: found 6000 rpm alone; allowed: at least two speeds within 2000 to 7600 rpm/,
    ],
    [
      [DESIGN, '--band', '2000-3000', '--speeds', '6000,6500'],
      /--speeds: found 6000 to 6500 rpm; allowed: at least two speeds within 2000 to 3000 rpm/,
    ],
    [[DESIGN, '--speeds', '3000,30000'], /--speeds: found "30000"; allowed: speeds from 200 to 20000 rpm/],
    [[DESIGN, '--speeds', '-5'], /--speeds: found "-5"; allowed: speeds from 200/],
    [[DESIGN, '--speeds', '3000,,4000'], /--speeds: found ""/],
    [[DESIGN, '--band', '6000-2000'], /--band: found "6000-2000"; allowed: the lower and the higher/],
    [[DESIGN, '--band', '100-2000'], /--band: found "100-2000"; allowed: speeds from 200/],
    [[DESIGN, '--trace', '0'], /--trace: found "0"/],
    [[DESIGN, '--trace', '3000'], /--trace: needs -o/],
    [[DESIGN, '--cells', '0.1'], /--cells: found "0\.1"; allowed: the longest cell, 1 to 100 mm/],
    [[DESIGN, '--threads', '0'], /--threads: found "0"/],
    [
      [DESIGN, '-o', 'out.txt'],
      /-o, --output: found "out\.txt"; allowed: a name that ends in \.csv or \.json, such as out\.csv/,
    ],
    [[DESIGN, '-o', '.csv'], /-o, --output: found "\.csv"/],
    [[DESIGN, '-o', 'a.csv', '-o', 'b.csv'], /found two names that end in \.csv/],
    [[DESIGN, '-o', 'no/out.csv'], /the folder .*no does not exist/],
    [[DESIGN, '-o', UNLAID], /unlaid\.evenrun\.json holds a design, which would be lost; choose another name/],
    [[DESIGN, '--against', 'cast', '-o', UNLAID], /unlaid\.evenrun\.json holds a design/],
    [[DESIGN, '--imbalance', '20', '-o', UNLAID], /unlaid\.evenrun\.json holds a design/],
    [[DESIGN, '--study', '-o', UNLAID], /unlaid\.evenrun\.json holds a design/],
    [[DESIGN, '-o', DESIGN], /four\.evenrun\.json is the design itself; choose another name/],
    [
      [DESIGN, '--against', 'none'],
      /--against: .*none: no such file; allowed: a design, or cast, sketch, header or equal/,
    ],
    [[DESIGN, '--against', UNLAID], /unlaid\.evenrun\.json: runners\/r1\/points/],
    [[DESIGN, '--against', 'cast', '--study'], /--study: does not go with --against/],
    [[DESIGN, '--imbalance', 'much'], /--imbalance: found "much"/],
    [
      [DESIGN, '--imbalance', '1900'],
      /--imbalance: 1900 mm: Pipe "r1" of -\d{2,3}(\.\d)? mm: at least 94 mm, as 84 mm of it lie in the head; allowed: less/,
    ],
    [[DESIGN, '--lengths', '500'], /--lengths: does not go with a torque curve; it is for --study/],
    [[DESIGN, '--study', '--trace', '3000'], /--trace: does not go with --study; it is for a torque curve/],
    [[DESIGN, '--resume'], /--resume: does not go with a torque curve; it is for --study/],
    [[DESIGN, '--study', '--resume'], /--resume: needs -o STUDY\.json/],
    [[DESIGN, '--study', '--resume', '-o', 's.json'], /s\.json: no such file; leave --resume out/],
    [[DESIGN, '--study', '--arrangements', 'all'], /--arrangements: found "all"; allowed: all-into-one/],
    [
      [DESIGN, '--study', '--arrangements', 'threes-then-one'],
      /--arrangements: found "threes-then-one", which .*; allowed: all-into-one, pairs-then-one$/m,
    ],
    [[DESIGN, '--study', '--bores', '4'], /--bores: found "4"; allowed: 10 to 200 mm/],
    [[DESIGN, '--study', '--best', 'best.csv'], /--best: found "best\.csv"; allowed: a name that ends in \.json/],
    [
      [DESIGN, '--study', '-o', 's.json', '--best', 's.json'],
      /--best: s\.json is the study itself; choose another name/,
    ],
    [[DESIGN, '--study', '-o', 's.json', '--best', './sub/../s.json'], /is the study itself/],
    [[DESIGN, '--study', '--best', DESIGN], /--best: four\.evenrun\.json is the design itself/],
    [['--rig', 'x.json', '--speeds', '3'], /--speeds: does not go with --rig/],
    [['--rig', 'x.json', '-o', 'a.csv', '-o', 'b.csv'], /found 2 names; allowed: one with --rig/],
  ])('%j', refused);

  test('unequal lengths of one primary', async () => {
    const { engine, ports } = JSON.parse(text(DESIGN));
    const { firingOrder: _, banks: __, firingAngles: ___, ...rest } = engine;
    const alone = { engine: { ...rest, cylinders: 1 }, ports: [ports[0]], runners: [], merges: [], flanges: [] };
    await refused(
      [change('one.json', { ...alone, groups: {} }), '--on', 'cast', '--imbalance', '20'],
      /--imbalance: found one primary alone, .*allowed: two at least/,
    );
  });

  test('an engine used beyond what may be asked for', async () => {
    const engine = { ...JSON.parse(text(DESIGN)).engine, rpm: [15000, 25000] };
    await refused(
      [change('fast.json', { engine }), '--speeds', '3'],
      /engine\/rpm: found \[15000, 25000\]; allowed: speeds from 200 to 20000 rpm/,
    );
  });

  test('an engine without bore and stroke', async () => {
    const { bore: _, stroke: __, ...engine } = JSON.parse(text(DESIGN)).engine;
    await refused([change('bare.json', { engine })], /bare\.json: engine\/bore: found nothing.*and 1 more/);
  });

  test('a study that is none', async () => {
    writeFileSync(at('s.json'), '{"format":"evenrun-design"}');
    await refused(
      [DESIGN, '--study', '--resume', '-o', 's.json'],
      /s\.json: format: found "evenrun-design"; allowed: "evenrun-study"/,
    );
    expect(text('s.json')).toBe('{"format":"evenrun-design"}');
  });
});
