/** Everything that is drawn, from the header as it stands. Each part rebuilds itself only when its own source changes. */
import { flangePlan, type Header, type Meshes, type PlatePlan, startTrim } from '../../../geometry';
import type { Flange } from '../../../shared/design/types';
import type { Paint } from '../colours';
import { PlayedCollector, PlayedTube } from '../forecast/motion/Played';
import type { Owned, OwnerKey } from '../made/owned';
import { useLifted } from '../room/lifted';
import { useStance } from '../room/posed';
import type { Ref } from '../session';
import { isHidden } from '../viewState';
import type { Ball } from './camera/fit';
import { ASSEMBLED, type Exploded } from './model/explode';
import { plates } from './model/plates';
import type { Palette } from './palette';
import { Collector } from './parts/Collector';
import { Ground } from './parts/Ground';
import { HeadFace } from './parts/HeadFace';
import { MadeParts } from './parts/MadeParts';
import { Moved } from './parts/Moved';
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
  /** The real parts that this header has, by owner; what has none is drawn by its quick picture. */
  readonly made: ReadonlyMap<OwnerKey, Owned>;
  readonly exploded: Exploded;
};

const NO_PLANS: readonly PlatePlan[] = [];
const known = new WeakMap<Owned['parts'], readonly PlatePlan[]>();

/** How a flange's plates are drawn flat, once for the parts that were made of them. */
function plansOf(header: Header, flange: Flange, { parts }: Owned): readonly PlatePlan[] {
  const plans = known.get(parts) ?? flangePlan(header, flange).plates;
  known.set(parts, plans);
  return plans;
}

export function Scene({ header, meshes, paints, palette, around, ground, made, exploded }: Props) {
  const strength = strengthFor(header.surroundings.length);
  const hiding = useHiding();
  // A piece on its way off is drawn where it is by then.
  const lifted = useLifted()?.keys;
  const shown = (kind: Ref['kind'], id: string) => {
    const key = `${kind}/${id}`;
    return !isHidden(hiding, key) && (kind === 'flange' || !lifted?.has(key));
  };
  const stance = useStance(header.design);
  const apart = exploded === ASSEMBLED ? null : exploded.parts;
  const owned = (key: OwnerKey) => made.get(key) ?? null;
  const madeParts = (key: OwnerKey) => {
    const own = owned(key);
    return own && <MadeParts key={key} parts={own.parts} ride={own.ride} palette={palette} apart={apart} />;
  };
  // A piece at the port takes the tube's place only while it is there.
  const trimOf = (runner: Header['runners'][number]): number => {
    const { from } = runner.runner;
    const isFormed = 'port' in from && header.ports.get(from.port)?.port.transition !== undefined;
    return isFormed && !owned(`port/${from.port}`) ? 0 : startTrim(header, runner);
  };
  const ghosts = (fixedTo: 'engine' | 'vehicle') =>
    header.surroundings
      .filter((s) => shown('surrounding', s.id) && (s.fixedTo ?? 'vehicle') === fixedTo)
      .map((s) => (
        <Ghost key={s.id} surrounding={s} meshes={meshes} palette={palette} strength={strength} around={around} />
      ));
  return (
    <>
      <Stage palette={palette} />
      <Ground around={around} z={ground} palette={palette} />
      <Moved by={stance.turn}>
        {plates(header)
          .filter(({ flange }) => !flange || shown('flange', flange.id))
          .map((plate) => {
            const own = plate.flange && owned(`flange/${plate.flange.id}`);
            return (
              <HeadFace
                key={plate.id}
                plate={plate}
                palette={palette}
                made={own}
                plans={plate.flange && own ? plansOf(header, plate.flange, own) : NO_PLANS}
                apart={apart}
                away={exploded.plates.get(plate.id)}
                bare={lifted?.has(`flange/${plate.flange?.id}`) ?? false}
              />
            );
          })}
        {[...header.merges.values()]
          .filter(({ merge }) => shown('merge', merge.id))
          .map((merge) => {
            const key = `merge/${merge.merge.id}` as const;
            const away = exploded.merges.get(merge.merge.id);
            const atRest = madeParts(key) ?? <Collector merge={merge} palette={palette} away={away} />;
            return (
              <Moved key={merge.merge.id} by={stance.grown(merge.material)}>
                <PlayedCollector merge={merge} palette={palette} away={away} atRest={atRest} />
              </Moved>
            );
          })}
        {header.runners
          .filter(({ runner }) => shown('runner', runner.id))
          .map((runner) => {
            const { id, to } = runner.runner;
            const paint = paints.get(id)!.colour;
            const drawn = { runner, palette, trim: trimOf(runner), away: exploded.runners.get(id) };
            if (runner.centerline)
              return (
                <Moved key={id} by={stance.grown(runner.tube.material)}>
                  <PlayedTube {...drawn} atRest={<Runner {...drawn} paint={paint} />} />
                </Moved>
              );
            const goal = runner.end?.position ?? header.merges.get(to.merge)?.merge.position;
            return goal ? <Unrouted key={id} runner={runner} to={goal} paint={paint} /> : null;
          })}
        {header.runners
          .filter(({ runner }) => 'port' in runner.from && shown('runner', runner.id))
          .map(({ runner }) => madeParts(`port/${(runner.from as { port: string }).port}`))}
        {ghosts('engine')}
      </Moved>
      {ghosts('vehicle')}
      <OtherVersion palette={palette} />
    </>
  );
}
