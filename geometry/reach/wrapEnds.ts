/**
 * A design with its wrap ended as plans say. Apart from the finding of plans, because whoever has one needs no more than this: the
 * app finds them in a worker. mm along the centerlines.
 */
import type { Design } from '../../shared/design/types';
import type { WrapPlan } from './report';
import { common } from './spans';

/** The design with its wrap stopped where the plans say: what it wraps, less what must stay bare. */
export function withWrapEnds(design: Design, plans: readonly WrapPlan[]): Design {
  const byRunner = new Map(plans.map((plan) => [plan.runner, plan]));
  return {
    ...design,
    runners: design.runners.map((runner) => {
      const plan = byRunner.get(runner.id);
      if (!plan) return runner;
      const left = common(plan.wrapped, plan.possible);
      const same =
        left.length === plan.wrapped.length &&
        left.every(([a, b], i) => a === plan.wrapped[i]![0] && b === plan.wrapped[i]![1]);
      return same ? runner : { ...runner, wrapped: left };
    }),
  };
}
