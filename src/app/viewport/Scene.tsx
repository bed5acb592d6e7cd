/** Everything that is drawn, from the header as it stands. Each part rebuilds itself only when its own source changes. */
import type { Header, Meshes } from '../../../geometry';
import type { Paint } from '../colours';
import type { Ref } from '../session';
import { isHidden } from '../viewState';
import type { Ball } from './camera/fit';
import { plates } from './model/plates';
import type { Palette } from './palette';
import { Collector } from './parts/Collector';
import { Ground } from './parts/Ground';
import { HeadFace } from './parts/HeadFace';
import { OtherVersion } from './parts/OtherVersion';
import { Runner } from './parts/Runner';
import { Stage } from './parts/Stage';
import { Ghost, strengthFor } from './parts/Surroundings';
import { Unrouted } from './parts/Unrouted';
import { useHiding } from './seen';

type Props = {
  readonly header: Header;
  readonly meshes: Meshes;
  readonly paints: ReadonlyMap<string, Paint>;
  readonly palette: Palette;
  readonly around: Ball;
  readonly ground: number;
};

export function Scene({ header, meshes, paints, palette, around, ground }: Props) {
  const strength = strengthFor(header.surroundings.length);
  const hiding = useHiding();
  const shown = (kind: Ref['kind'], id: string) => !isHidden(hiding, `${kind}/${id}`);
  return (
    <>
      <Stage palette={palette} />
      <Ground around={around} z={ground} palette={palette} />
      {plates(header)
        .filter(({ flange }) => !flange || shown('flange', flange.id))
        .map((plate) => (
          <HeadFace key={plate.id} plate={plate} palette={palette} />
        ))}
      {[...header.merges.values()]
        .filter(({ merge }) => shown('merge', merge.id))
        .map((merge) => (
          <Collector key={merge.merge.id} merge={merge} palette={palette} />
        ))}
      {header.runners
        .filter(({ runner }) => shown('runner', runner.id))
        .map((runner) => {
          const { id, to } = runner.runner;
          const paint = paints.get(id)!.colour;
          if (runner.centerline) return <Runner key={id} runner={runner} paint={paint} palette={palette} />;
          const goal = runner.end?.position ?? header.merges.get(to.merge)?.merge.position;
          return goal ? <Unrouted key={id} runner={runner} to={goal} paint={paint} /> : null;
        })}
      {header.surroundings
        .filter((s) => shown('surrounding', s.id))
        .map((s) => (
          <Ghost key={s.id} surrounding={s} meshes={meshes} palette={palette} strength={strength} />
        ))}
      <OtherVersion palette={palette} />
    </>
  );
}
