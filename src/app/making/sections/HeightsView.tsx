/** How a made tube is proved with a ruler: from end to end, then lying on a plate, with how high its underside stands. */
import type { Header } from '../../../../geometry';
import { heightName } from '../../../shop/bench/checkSteps';
import type { CheckHeights } from '../../../shop/making/report';
import { Length } from '../../parts/Length';
import { PlateDrawing } from '../../workbench/drawings/PlateDrawing';

type Props = { readonly found: CheckHeights | undefined; readonly header: Header };

export function HeightsView({ found, header }: Props) {
  if (!found) return null;
  const diameter = header.runners.find((r) => r.runner.id === found.runner)?.tube.outsideDiameter ?? 0;
  return (
    <details className="room-details">
      <summary>
        Check heights <span className="quiet">with a ruler, on a flat plate</span>
      </summary>
      <PlateDrawing points={found.points} diameter={diameter} />
      <table>
        <thead>
          <tr>
            <th scope="col">At</th>
            <th scope="col" className="right">
              Over the plate
            </th>
          </tr>
        </thead>
        <tbody>
          {found.heights.map(({ at, height }) => (
            <tr key={at}>
              <th scope="row">{heightName(at)}</th>
              <td className="right">
                <Length mm={height} decimals={1} />
              </td>
            </tr>
          ))}
          <tr>
            <th scope="row">End to end, straight across</th>
            <td className="right">
              <Length mm={found.chord} decimals={1} />
            </td>
          </tr>
          <tr>
            <th scope="row">End to end, along the plate</th>
            <td className="right">
              <Length mm={found.span} decimals={1} />
            </td>
          </tr>
        </tbody>
      </table>
    </details>
  );
}
