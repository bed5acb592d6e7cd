/** The checker asks its worker about the newest design only, sends meshes once, and survives a worker that breaks. */
import { describe, expect, it } from 'vitest';
import type { CheckReport } from '../../geometry';
import { type CheckAnswer, createChecker } from '../../src/app/workers/checker';
import { titled } from './designs';
import { fakeWorkers, type JobRequest } from './fakeWorkers';

const report: CheckReport = {
  ok: true,
  problems: [],
  runners: [],
  groups: [],
  clearance: { tubeToTube: null, surroundings: null, mergeBodies: null },
};

function bench() {
  const answers: CheckAnswer[] = [];
  const { asked, workers, make, reply } = fakeWorkers<JobRequest<'check'>>();
  const checker = createChecker((a) => answers.push(a), make);
  return { asked, workers, answers, checker, reply };
}

describe('the checker', () => {
  it('skips designs that were overtaken while it measured', () => {
    const { asked, answers, checker, reply } = bench();
    const meshes = new Map();
    for (const t of ['a', 'b', 'c']) checker.ask(titled(t), meshes);
    expect(asked.map((r) => r.design.title)).toEqual(['a']);
    reply({ done: report });
    reply({ done: report });
    expect(asked.map((r) => r.design.title)).toEqual(['a', 'c']);
    expect(answers.map((a) => [a.design.title, a.more])).toEqual([
      ['a', true],
      ['c', false],
    ]);
  });

  it('sends meshes when they change and not otherwise', () => {
    const { asked, checker, reply } = bench();
    const meshes = new Map([['bay.stl', new Float32Array(9)]]);
    for (const m of [meshes, meshes, new Map()]) {
      checker.ask(titled('a'), m);
      reply({ done: report });
    }
    expect(asked.map((r) => r.meshes?.size ?? null)).toEqual([1, null, 0]);
  });

  it('reports a failure and goes on with a new worker after a crash, meshes and all', () => {
    const { asked, answers, workers, checker, reply } = bench();
    const meshes = new Map();
    checker.ask(titled('a'), meshes);
    reply({ failed: 'no' });
    checker.ask(titled('b'), meshes);
    workers[0]!.onerror!.call(null as never, { message: 'out of memory' } as ErrorEvent);
    checker.ask(titled('c'), meshes);
    reply({ done: report });
    expect(answers.map((a) => ('error' in a ? a.error : 'ok'))).toEqual(['no', 'out of memory', 'ok']);
    expect(workers.map((w) => w.ended)).toEqual([true, false]);
    expect(asked.at(-1)!.meshes).toBe(meshes);
  });
});
