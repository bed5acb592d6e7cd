/** `pulse DESIGN --study`, with an invented engine: what is followed, kept, gone on with, ranked and written. */
import { existsSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { inventedTorque } from '../pulse/forecast/fakes';
import { DESIGN, designBench, invented, pulse, UNLAID } from './pulseBench';

const { bench, at, text, table, ask, change } = designBench();

describe('a study', () => {
  const asked = { study: true, lengths: '500,700,900', bores: '36,40', arrangements: 'all-into-one', speeds: '4' };

  test('ranks sizes, follows three again, and writes the design with the best', async () => {
    const { code, out } = await ask({ ...asked, output: ['s.json', 's.csv'], best: 'best.evenrun.json' });
    expect(code).toBe(0);
    expect(out).toMatch(/24 of 24 speeds of 6 sizes/);
    expect(out).toMatch(/\nFollowed again on fine cells \(mean torque\): their order stays\n/);
    expect(out).toMatch(/\nOver every second speed alone, two sizes’ means move \d+\.\d\d N m from each other: /);
    expect(out).toMatch(/\nSizes whose means are within \d+\.\d\d N m of each other cannot be told apart here\n/);
    const { speedsError, gridError, apartBy } = JSON.parse((await ask({ ...asked, json: true })).out);
    expect(speedsError.checks).toHaveLength(6);
    expect(apartBy).toBeCloseTo(Math.hypot(gridError.spread, speedsError.spread), 12);
    const rows = table('s.csv');
    expect(rows.map(({ rank }) => rank)).toEqual(['1', '2', '3', '4', '5', '6']);
    const best = JSON.parse(text('best.evenrun.json'));
    const group = best.runners[0].group;
    expect(best.groups[group].length).toBe(Number(rows[0]!.primary_length_mm));
    expect((await bench().evenrun('check', 'best.evenrun.json')).code).toBeLessThan(2);
  });

  test('of which no size could be written as the best is refused before anything is followed', async () => {
    const start = invented(() => {
      throw new Error('nothing is to be followed');
    });
    const given = { ...asked, arrangements: 'pairs-then-one', output: 's.json', best: 'best.evenrun.json' };
    await expect(ask(given, start)).rejects.toThrow(
      /--best: runners: found all-into-one, as drawn; allowed: pairs-then-one.*; or leave --best out/,
    );
    expect(existsSync(at('s.json'))).toBe(false);
  });

  test('whose best is joined in another way than drawn says so before and after, and loses nothing', async () => {
    const pairsWin = invented(
      (job) => inventedTorque(job) + (job.path.pipes.some((p) => p.role === 'secondary') ? 50 : 0),
    );
    const given = { ...asked, arrangements: 'all-into-one,pairs-then-one', output: ['s.json', 's.csv'] };
    const { code, out, err } = await ask({ ...given, best: 'best.evenrun.json' }, pairsWin);
    expect(code).toBe(1);
    const [before, after, ...rest] = err.trimEnd().split('\n');
    expect(before).toMatch(
      /^evenrun: --best: a size of pairs-then-one cannot be written.*or study --arrangements all-into-one alone$/,
    );
    expect(after).toMatch(
      /^evenrun: --best: pairs-then-one, .* cannot be written: runners: .*best\.evenrun\.json is not written$/,
    );
    expect(rest).toEqual([]);
    expect(out).toMatch(/\n {3}1 {2}pairs-then-one /);
    expect(table('s.csv')).toHaveLength(12);
    expect(existsSync(at('s.json'))).toBe(true);
    expect(existsSync(at('best.evenrun.json'))).toBe(false);
  });

  test('has the rules of thumb beside its best size, and says whether they ask for anything like it', async () => {
    const { out } = await ask(asked);
    expect(out).toMatch(
      /\nRules of thumb for primaries of all-into-one over 2000 to 7600 rpm; each is a starting point, none a proof:\n/,
    );
    expect(out).toMatch(/\n {2}Opening-period rule +\d+ to \d+ mm long\n/);
    expect(out).toMatch(/\n {2}Port and an eighth +at least 40\.2 mm bore\n/);
    expect(out).toMatch(
      /\n {2}the best length here, 700 mm, lies within what the rules differ by among themselves, \d+ to \d+ mm at \d+ rpm\n/,
    );
    const likesShort = invented((job) => 200 - 100 * job.path.pipes[0]!.length);
    const short = await ask({ ...asked, lengths: '150,700' }, likesShort);
    expect(short.out).toMatch(
      /\n {2}the best length here, 150 mm, is shorter than any rule asks for, \d+ to \d+ mm at \d+ rpm: look at it twice\n/,
    );
    const { rules } = JSON.parse((await ask({ ...asked, lengths: '150,700', json: true }, likesShort)).out);
    expect(rules.asked.length).toBeGreaterThan(5);
    expect(rules.best.length).toMatchObject({ is: 150, lies: 'below' });
  });

  test('interrupted, keeps what there is; resumed, comes to the same as in one go', async () => {
    await ask({ ...asked, output: 'whole.json' });
    const cut = await ask({ ...asked, output: 's.json' }, invented(), 10);
    expect(cut.code).toBe(1);
    expect(cut.err).toBe('evenrun: interrupted with 10 of 24 speeds followed; --resume goes on from s.json\n');
    expect(text('s.json')).not.toBe(text('whole.json'));
    const { code } = await ask({ ...asked, output: 's.json', resume: true });
    expect(code).toBe(0);
    expect(text('s.json')).toBe(text('whole.json'));
  });

  test('interrupted before the first answer, writes nothing', async () => {
    const { code, err } = await ask({ ...asked, output: ['s.json', 's.csv'] }, invented(), 0);
    expect(code).toBe(1);
    expect(err).toBe('evenrun: interrupted with 0 of 24 speeds followed; nothing is written\n');
    expect([existsSync(at('s.json')), existsSync(at('s.csv'))]).toEqual([false, false]);
  });

  test('of a header that is not laid out yet needs no sketch, and leaves one', async () => {
    const { code } = await pulse(bench(), [UNLAID], { ...asked, best: 'best.evenrun.json' });
    expect(code).toBe(0);
    expect(JSON.parse(text('best.evenrun.json')).exhaust.sketch.primary.length).toBeGreaterThanOrEqual(500);
    expect((await pulse(bench(), ['best.evenrun.json'], {})).out).toMatch(
      /sketch: 12 speeds.*[\s\S]*Runners are not laid out yet/,
    );
  });

  test('of the same engine used at other speeds is gone on with: nothing is followed twice', async () => {
    await ask({ ...asked, speeds: '3000,4000,5000', output: 's.json' });
    const design = JSON.parse(text(DESIGN));
    // The highest speed stays: the throttle, which nobody gave, is as wide as that takes.
    const name = change('wider.json', { engine: { ...design.engine, rpm: [2500, 7600] } });
    const { code, out } = await pulse(
      bench(),
      [name],
      { ...asked, speeds: '3000,4000,5000', output: 's.json', resume: true },
      invented(),
      0,
    );
    expect([code, out.split('\n')[0]]).toEqual([0, expect.stringMatching(/18 of 18 speeds of 6 sizes/)]);
  });

  test('of another engine is refused, and stays as it is', async () => {
    await ask({ ...asked, output: 's.json' });
    const before = text('s.json');
    const design = JSON.parse(text(DESIGN));
    const name = change('wide.json', { engine: { ...design.engine, bore: 86 } });
    await expect(pulse(bench(), [name], { ...asked, output: 's.json', resume: true })).rejects.toThrow(
      /s\.json: engine: found a study of another engine/,
    );
    await expect(ask({ ...asked, output: 's.json', resume: true, cells: '15' })).rejects.toThrow(
      /cell: found 20 mm; allowed: 15 mm, as is followed now: add --cells 20; or go on without --resume/,
    );
    expect(text('s.json')).toBe(before);
  });

  test('is not begun over another, whole or damaged, and says what to do', async () => {
    await ask({ ...asked, output: 's.json' }, invented(), 10);
    const before = text('s.json');
    const nothing = invented(() => {
      throw new Error('nothing is to be followed');
    });
    const refused =
      /-o, --output: s\.json holds a study, which would be lost; add --resume to go on with it, or choose another name/;
    await expect(ask({ ...asked, output: 's.json' }, nothing)).rejects.toThrow(refused);
    await expect(ask({ ...asked, lengths: '480', output: ['s.csv', 's.json'] }, nothing)).rejects.toThrow(refused);
    // Nor is another answer put in its place.
    await expect(ask({ output: 's.json' })).rejects.toThrow(/s\.json holds a study, which would be lost; choose/);
    expect(text('s.json')).toBe(before);
    const cut = before.slice(0, before.length / 2);
    writeFileSync(at('s.json'), cut);
    await expect(ask({ ...asked, output: 's.json' }, nothing)).rejects.toThrow(refused);
    expect(text('s.json')).toBe(cut);
    // What is no study is written over, as every other output is.
    writeFileSync(at('s.json'), '{}');
    expect((await ask({ ...asked, output: 's.json' })).code).toBe(0);
  });

  test('that is damaged is not gone on with: file, place and remedy are told, and it stays as it is', async () => {
    await ask({ ...asked, output: 's.json' });
    const good = text('s.json');
    const remedy =
      /; mend it there, or take out what is wrong and it is followed again; or go on without --resume, into another file \(-o\)\. The file stays as it is$/;
    for (const [spoilt, place] of [
      [good.slice(0, 2000), /s\.json: line \d+, column \d+: found the end of the file; allowed: /],
      [
        good.replace(/"torque":[\d.]+/, '"torque":9'),
        /s\.json: answers\/all-into-one, 500 mm .*\/points\/0\/power: found/,
      ],
      [
        good.replace(/"torque":[\d.]+/, '"torque":"x"'),
        /s\.json: answers\/.*\/points\/0\/torque: found "x"; allowed: a number/,
      ],
    ] as const) {
      writeFileSync(at('s.json'), spoilt);
      const going = ask({ ...asked, output: 's.json', resume: true });
      await expect(going).rejects.toThrow(place);
      await expect(going).rejects.toThrow(remedy);
      expect(text('s.json')).toBe(spoilt);
    }
  });

  test('is not gone on with from a file that holds something else', async () => {
    writeFileSync(at('s.json'), text(DESIGN));
    await expect(ask({ ...asked, output: 's.json', resume: true })).rejects.toThrow(
      /s\.json: format: found "evenrun-design"; allowed: "evenrun-study"; name a study with -o\. The file stays as it is$/,
    );
    expect(text('s.json')).toBe(text(DESIGN));
  });
});
