/** A runner that has no way yet: a dashed line from where it starts to where it is to go. */
import { useMemo } from 'react';
import type { ResolvedRunner } from '../../../../geometry';
import type { Vec3 } from '../../../../shared/vec3';
import { Lines } from '../gl/Lines';

type Props = { readonly runner: ResolvedRunner; readonly to: Vec3; readonly paint: string };

export function Unrouted({ runner, to, paint }: Props) {
  const from = runner.start.position;
  const pairs = useMemo(() => [...from, ...to], [from, to]);
  return <Lines pairs={pairs} colour={paint} width={1.8} dash={9} />;
}
