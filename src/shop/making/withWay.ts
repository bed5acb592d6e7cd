/** A design whose tube groups are made another way. */
import type { Design, Tooling } from '../../../shared/design/types';
import type { Way } from './report';

/** @param tubes names of tooling that the design has; its other rules are left as they are, and may then fail */
export function withWay(design: Design, tubes: readonly string[], way: Way): Design {
  const changed = Object.entries(design.tooling).map(([name, tooling]): [string, Tooling] => [
    name,
    tubes.includes(name) ? { ...tooling, making: way } : tooling,
  ]);
  return { ...design, tooling: Object.fromEntries(changed) };
}
