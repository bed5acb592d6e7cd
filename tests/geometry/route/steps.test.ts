/** Rounds in steps: many of them, and what they come to is what the round comes to. */
import { expect, test } from 'vitest';
import { router } from '../../../geometry';
import { allOf, type Steps } from '../../../geometry/route/steps';
import { loadLayout } from '../../layouts/load';

test('all steps are taken, and what comes of them is told', () => {
  let taken = 0;
  function* three(): Steps<string> {
    for (; taken < 3; taken++) yield;
    return 'done';
  }
  expect(allOf(three())).toBe('done');
  expect(taken).toBe(3);
});

test('a round taken in steps comes to the same layout as the round at once', () => {
  const { design, meshes } = loadLayout('public', 'p12-medium');
  for (const n of [0, 1, 2]) {
    const steps = router(design, meshes).steps(n);
    let pauses = 0;
    let step = steps.next();
    for (; !step.done; step = steps.next()) pauses++;
    // The first round only guesses.
    expect(pauses).toBeGreaterThan(n === 0 ? 0 : 2);
    expect(step.value).toEqual(router(design, meshes).round(n));
  }
});
