/** How far apart sizes must lie to be told apart: what few speeds put wrong between them, of curves that are known. */
import { describe, expect, test } from 'vitest';
import { readCsv } from '../../../src/formats/csv/readCsv';
import { studyCsv } from '../../../src/pulse/forecast/csv';
import { beginStudy, type StudyDocument } from '../../../src/pulse/forecast/study';
import { apartBy, speedsError } from '../../../src/pulse/forecast/studyDoubt';
import { gridError, ranked } from '../../../src/pulse/forecast/studyRank';
import { fakeTeam } from './fakes';
import { engine, pathOf, plan, whole } from './studied';

describe('few speeds', () => {
  /** Torque by length and speed, N m, followed at so many speeds of the band. */
  const studied = async (torque: (length: number, rpm: number) => number, count: number): Promise<StudyDocument> => {
    const speeds = Array.from({ length: count }, (_, k) => 3000 + (3000 * k) / (count - 1));
    const study = beginStudy('four', engine, pathOf, { ...plan, speeds });
    await study.follow(fakeTeam((job) => torque(job.path.pipes[0]!.length, job.rpm)));
    return study.document();
  };
  const hump = (length: number, rpm: number) => 150 - ((rpm - 3000 - 3000 * length) / 1000) ** 4;

  test('put nothing wrong between sizes whose curves are alike but for their height', async () => {
    expect(speedsError(await studied((length, rpm) => 100 * length + hump(0.5, rpm), 6))!.spread).toBeCloseTo(0, 9);
    expect(speedsError(await studied((length, rpm) => length * rpm, 5))!.spread).toBeCloseTo(0, 9);
  });

  test('put wrong what is told, or less: smooth curves a third of it, by twice the speeds a quarter', async () => {
    const [few, more, most] = await Promise.all([5, 9, 161].map((count) => studied(hump, count)));
    const told = speedsError(few!)!;
    expect(told.checks).toHaveLength(6);
    const means = (study: StudyDocument) => new Map(ranked(study).map(({ key, summary }) => [key, summary.mean!]));
    const [rough, exact] = [means(few!), means(most!)];
    const errors = [...rough].map(([key, mean]) => mean - exact.get(key)!);
    const pairs = errors.flatMap((a) => errors.map((b) => (a - b) ** 2));
    const real = Math.sqrt(pairs.reduce((sum, one) => sum + one, 0) / (errors.length * (errors.length - 1)));
    expect(real).toBeGreaterThan(0.1);
    expect(told.spread / real).toBeGreaterThan(1);
    expect(told.spread / real).toBeLessThan(6);
    expect(told.spread / speedsError(more!)!.spread).toBeGreaterThan(3);
    // The half that is told of each size, worked out beside.
    const [first] = told.checks;
    const [a, b, c] = few!.answers[first!.key]!.points.filter((_, k) => k % 2 === 0).map((point) =>
      'failed' in point ? Number.NaN : point.torque,
    );
    expect(first!.half).toBeCloseTo((a! + 2 * b! + c!) / 4, 9);
  });

  test('add to what coarse cells put wrong; below four speeds, or of one size, nothing is known', async () => {
    const study = await studied(hump, 6);
    expect(apartBy(study)).toBe(speedsError(study)!.spread);
    const checked = await whole(fakeTeam());
    expect(apartBy(checked)).toBeCloseTo(Math.hypot(gridError(checked)!.spread, speedsError(checked)!.spread), 12);
    expect(speedsError(await studied(hump, 3))).toBe(null);
    expect(speedsError({ ...study, sizes: study.sizes.slice(0, 1) })).toBe(null);
    const rows = readCsv(studyCsv(study));
    const halves = new Map(speedsError(study)!.checks.map(({ all, half }) => [all.toFixed(8), half.toFixed(8)]));
    for (const row of rows) expect(row.mean_on_every_second_speed_nm).toBe(halves.get(row.mean_nm!));
  });
});
