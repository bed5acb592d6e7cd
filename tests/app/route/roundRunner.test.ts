/** A worker's rounds without a worker: what it tells, when it says that it was cut short; and pools of any size agree. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Router } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import type { Design } from '../../../shared/design/types';
import { createGathering } from '../../../src/app/route/gathering';
import type { RouteReply, RouteRequest } from '../../../src/app/route/messages';
import { type Machine, startPool } from '../../../src/app/route/pool';
import { roundRunner } from '../../../src/app/route/roundRunner';
import { type Random, random } from '../../random';
import { titled } from '../designs';
import { layout } from './layouts';

const LAY: RouteRequest = { do: 'lay', design: titled('a'), meshes: new Map(), options: { seed: 3 } };

function runner(round: Router['round']) {
  const told: RouteReply[] = [];
  const clock = { ms: 0 };
  const run = roundRunner(
    (reply) => void told.push(reply),
    () => clock.ms,
    () => ({ round }),
  );
  return { told, run, clock };
}

describe("a worker's rounds", () => {
  it('tells each layout as it is found, then what the round came to', () => {
    const { told, run } = runner((n, see) => {
      see?.(layout(n, 200));
      see?.(layout(n, 190));
      return { layouts: [layout(n, 190)], attempt: null };
    });
    run(LAY);
    run({ do: 'round', n: 4, ms: 1000 });
    expect(told.map((r) => ('seen' in r ? r.seen.angle : 'round' in r ? [r.n, r.cut] : r))).toEqual([
      200,
      190,
      [4, false],
    ]);
  });

  it('ends a round when its time is up, and says that it was cut', () => {
    const { told, run, clock } = runner((_n, _see, stopped) => {
      while (!stopped?.()) clock.ms += 10;
      return { layouts: [], attempt: layout(0, 100, 1) };
    });
    run(LAY);
    run({ do: 'round', n: 0, ms: 95 });
    expect(clock.ms).toBe(100);
    expect(told).toMatchObject([{ n: 0, cut: true, round: { attempt: { angle: 100 } } }]);
  });

  it('tells what it threw on, and what it was asked too early', () => {
    const { told, run } = runner(() => {
      throw new Error('The head swallows port p1.');
    });
    run({ do: 'round', n: 0, ms: 10 });
    run(LAY);
    run({ do: 'round', n: 0, ms: 10 });
    expect(told).toEqual([{ failed: 'Nothing is to be laid yet.' }, { failed: 'The head swallows port p1.' }]);
  });
});

/** Workers that answer in turns of this thread, now one sooner and now the other. */
function inTurns(cores: number, next: Random): Machine {
  return {
    cores,
    makeWorker() {
      const worker = { onmessage: null, onerror: null, postMessage, terminate() {} } as unknown as Worker;
      const run = roundRunner(
        (data) => setTimeout(() => worker.onmessage?.({ data } as MessageEvent), next.between(0, 30)),
        () => 0,
      );
      function postMessage(request: RouteRequest): void {
        setTimeout(() => run(request));
      }
      return worker;
    },
    now: () => 0,
    later: () => () => {},
  };
}

const EXAMPLE = join(import.meta.dirname, '../../../public/examples/four-4-1.evenrun.json');

function bare(): Design {
  const design = parseDesign(readFileSync(EXAMPLE, 'utf8'));
  return { ...design, runners: design.runners.map(({ points: _points, radii: _radii, ...rest }) => rest) };
}

describe('the same rounds of the 4-1 example', () => {
  it('come to the same layouts in one worker and in three, whoever answers first (seeds 1 and 3)', {
    timeout: 120_000,
  }, async () => {
    const laid = (cores: number) =>
      new Promise<string>((resolve, reject) => {
        const gathering = createGathering();
        const wish = { design: bare(), meshes: new Map(), options: { seed: 5 }, seconds: 1000, rounds: 3 };
        const ended = () => resolve(JSON.stringify(gathering.harvest()));
        startPool(
          wish,
          gathering,
          { changed() {}, ended, failed: (why) => reject(new Error(why)) },
          inTurns(cores, random(cores)),
        );
      });
    const alone = await laid(1);
    expect(JSON.parse(alone).best).not.toBeNull();
    expect(await laid(3)).toBe(alone);
  });
});
