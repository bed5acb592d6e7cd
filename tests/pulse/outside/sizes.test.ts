/**
 * The sizes that a study finds best beside rules of thumb (their sources are told with each, in `shared/engine/sizing`): pairs first,
 * then one. Coarse cells, few sizes, six speeds.
 */
import { readFileSync } from 'node:fs';
import { beforeAll, expect, it } from 'vitest';
import { parseDesign } from '../../../shared/design/parse';
import type { Team } from '../../../src/pulse/forecast/job';
import { rulesBeside } from '../../../src/pulse/forecast/rulesBeside';
import { speedsOf } from '../../../src/pulse/forecast/speeds';
import { beginStudy, type StudyDocument } from '../../../src/pulse/forecast/study';
import { alikeBest } from '../../../src/pulse/forecast/studyDoubt';
import { ranked } from '../../../src/pulse/forecast/studyRank';
import { keyOf, sketchOf, studySizes } from '../../../src/pulse/forecast/studySizes';
import { engineOf } from '../../../src/pulse/forecast/subject';
import { sketchPath } from '../../../src/pulse/path/sketch';
import { followAll } from '../followed';

/** ms: some tens of speeds are followed. */
const LONG = 240_000;
/** m */
const CELL = 0.03;
const file = new URL('../../../public/examples/four-4-1.evenrun.json', import.meta.url);
const design = parseDesign(readFileSync(file, 'utf8'));
const { engine } = engineOf(design);
const band = engine.speeds;

const team: Team = {
  async follow(jobs, tell) {
    for (const [k, answer] of (await followAll(jobs)).entries()) tell(k, answer);
  },
};

let found: StudyDocument;
beforeAll(async () => {
  const sizes = studySizes(design, engine, {
    // Of those that a study tries by itself.
    lengths: [295, 395, 495],
    bores: [35, 39.4, 45.3],
    arrangements: ['pairs-then-one'],
  });
  const pathOf = (size: (typeof sizes)[number]) => sketchPath(sketchOf(design, engine, size), design).path;
  const study = beginStudy('pairs-then-one', engine, pathOf, { band, speeds: speedsOf(band, 6), cell: CELL, sizes });
  await study.follow(team);
  found = study.document();
}, LONG);

const rules = () => rulesBeside(design, band, 'pairs-then-one', alikeBest(found)).best!;

it('some sizes are told apart from the best, so that agreeing with the rules says something', () => {
  expect(ranked(found).filter(({ rank }) => rank !== null)).toHaveLength(9);
  const alike = alikeBest(found).map(keyOf);
  expect(alike).not.toContain('pairs-then-one, 295 mm of 48.3 x 1.5');
  expect(alike.length).toBeLessThan(7);
});

it('the best length lies within what the rules differ by among themselves', () => {
  expect(rules().length).toMatchObject({ lies: 'within', agrees: true });
});

it('bores that cannot be told apart from the best are those that the rules ask for, and others about them', () => {
  const { alike, from, to, agrees } = rules().bore!;
  expect(agrees).toBe(true);
  expect(alike[0]).toBeLessThan(from);
  expect(alike[1]).toBeGreaterThan(to);
});
