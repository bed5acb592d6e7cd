/**
 * Tries proposals for the merges' places, one length after another, until shapes chosen together can be balanced into a
 * header that holds. mm. Deterministic.
 */
import type { Design, Runner } from '../../shared/design/types';
import { check } from '../check/check';
import type { CheckReport } from '../check/report';
import { resolveHeader } from '../header/resolve';
import { balance, balancePoints } from '../layout/balance';
import { addScaled } from '../vector';
import { type Choice, choose, diverse, type Option } from './choose';
import { leastLengths, optionsOf } from './options';

export type Attempt = { readonly design: Design; readonly report: CheckReport; readonly miss: number };

/** Free lengths are tried at these multiples of the shortest that every runner can have. */
const STRETCHES = [1.03, 1.1, 1.2, 1.35, 1.6];
/** A length asked may be a little below the shortest sampled: balance finds shapes between the samples. */
const BELOW_LEAST = 0.97;
/** Choices of shapes that are balanced, of those that look best. */
const BALANCED = 3;
/** Choices that cost more than this are hopeless, mm². */
const HOPELESS = 6000;
/** Rules missed by more than this do not hold, mm; below it check decides. */
const NEARLY = 1e-3;
/** Restarts of the last try. */
const RESTARTS = 6;

/**
 * @param bases the same design with its merges at different places, runners without lines
 * @returns the best header that holds, else the nearest miss; null where no line can be drawn at all
 */
export function search(bases: readonly Design[], stop: () => boolean): Attempt | null {
  const groups = Object.entries(bases[0]!.groups);
  const least = bases.map(leastLengths);
  const fixed = groups.every(([, g]) => g.length !== null);
  let nearest: Attempt | null = null;
  for (const stretch of fixed ? [1] : STRETCHES) {
    for (const [i, base] of bases.entries()) {
      if (stop()) return nearest;
      const lengths = new Map(groups.map(([id, g]) => [id, g.length ?? stretch * (least[i]!.get(id) ?? 0)]));
      if ([...lengths].some(([id, l]) => l < BELOW_LEAST * (least[i]!.get(id) ?? Number.POSITIVE_INFINITY))) continue;
      const options = optionsOf(base, lengths);
      const choices = diverse(
        choose(options, base.clearance?.tubeToTube ?? 0).filter((c) => c.cost < HOPELESS),
        BALANCED,
      );
      const attempts = choices.map((choice) => attempted(drawn(base, options, choice), stop));
      const holding = attempts.filter((a) => a.report.ok).sort((a, b) => effort(a) - effort(b));
      if (holding[0]) return holding[0];
      for (const attempt of attempts) if (!nearest || attempt.miss < nearest.miss) nearest = attempt;
    }
  }
  if (!nearest || stop()) return nearest;
  const last = balance(nearest.design, new Map(), { restarts: RESTARTS, cancelled: stop });
  return last.report.ok || last.report.problems.length < nearest.report.problems.length
    ? { ...nearest, design: last.design, report: last.report }
    : nearest;
}

export function attempted(design: Design, stop: () => boolean): Attempt {
  const { design: balanced, miss } = balancePoints(design, new Map(), { restarts: 0, cancelled: stop });
  return { design: balanced, report: check(balanced), miss: Math.max(miss, NEARLY) };
}

function drawn(base: Design, options: readonly (readonly Option[])[], { picks }: Choice): Design {
  return {
    ...base,
    runners: base.runners.map((runner, i): Runner => {
      const { inlet, shape } = options[i]![picks[i]!]!;
      return { ...runner, to: { ...runner.to, inlet }, points: shape.points };
    }),
  };
}

/** What a maker would have to do: right angles, and a bit for every bend's set-up. */
const effort = ({ report }: Attempt): number =>
  report.runners.reduce((sum, r) => sum + r.bends + r.angles.reduce((turned, a) => turned + a, 0) / 90, 0);

/** Lines that reach from end to end and promise nothing else: something to begin with where no better can be had. */
export function roughly(base: Design): Design {
  const header = resolveHeader(base);
  const next = new Map<string, number>();
  return {
    ...base,
    runners: header.runners.map(({ runner, start, tooling }): Runner => {
      const inlet = (next.get(runner.to.merge) ?? 0) + 1;
      next.set(runner.to.merge, inlet);
      const end = header.merges.get(runner.to.merge)!.inlets[inlet - 1]!;
      const leg = tooling.firstStraight + 1.5 * tooling.centerlineRadius;
      const points = [
        start.position,
        addScaled(start.position, start.direction, leg),
        addScaled(end.position, end.direction, -leg),
        end.position,
      ];
      return { ...runner, to: { ...runner.to, inlet }, points };
    }),
  };
}
