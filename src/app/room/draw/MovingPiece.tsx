/** A piece of the header on its way off: its tubes, collectors and plates, drawn where it stands along its path. */
import { type ReactNode, useMemo } from 'react';
import { startTrim } from '../../../../geometry';
import { plates } from '../../viewport/model/plates';
import { Collector } from '../../viewport/parts/Collector';
import { QuickFlange } from '../../viewport/parts/HeadFace';
import { MadeParts } from '../../viewport/parts/MadeParts';
import { Runner } from '../../viewport/parts/Runner';
import type { Lifted } from '../lifted';
import { useRoomLook } from '../look';
import { placeAlong } from './path';
import type { RoomLayerProps } from './RoomLayer';

type Props = RoomLayerProps & {
  readonly lifted: Lifted;
  /** What goes along with it. */
  readonly children?: ReactNode;
};

export function MovingPiece({ lifted, header, paints, palette, made, children }: Props) {
  const along = useRoomLook((s) => s.coming?.along ?? 0);
  const matrix = useMemo(() => placeAlong(lifted.piece.path, along), [lifted, along]);
  const { runners, merges, flanges } = lifted.piece;
  const parts = (key: Parameters<typeof made.get>[0]) => {
    const own = made.get(key);
    return own && <MadeParts key={key} parts={own.parts} ride={own.ride} palette={palette} apart={null} />;
  };
  return (
    <group matrix={matrix} matrixAutoUpdate={false} matrixWorldNeedsUpdate>
      {header.runners
        .filter(({ runner, centerline }) => runners.includes(runner.id) && centerline)
        .map((runner) => {
          const { id, from } = runner.runner;
          return (
            <group key={id}>
              <Runner
                runner={runner}
                paint={paints.get(id)!.colour}
                palette={palette}
                trim={startTrim(header, runner)}
                away={undefined}
              />
              {'port' in from && parts(`port/${from.port}`)}
            </group>
          );
        })}
      {merges.map((id) => {
        const merge = header.merges.get(id);
        return (
          parts(`merge/${id}`) ?? (merge && <Collector key={id} merge={merge} palette={palette} away={undefined} />)
        );
      })}
      {plates(header)
        .filter(({ flange }) => flange && flanges.includes(flange.id))
        .map(
          (plate) =>
            parts(`flange/${plate.flange!.id}`) ?? <QuickFlange key={plate.id} plate={plate} palette={palette} />,
        )}
      {children}
    </group>
  );
}
