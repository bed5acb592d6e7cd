/** What was found in a drawing and how well it lies on the flange's ports: for people, and as one object. mm. */
import { loopBounds, type PlacedDrawing, rigidWords } from '../../../geometry';
import type { Opening } from '../../../shared/design/types';
import { columns } from './columns';

export function printOutline(placed: PlacedDrawing, notes: readonly string[], taken: string, output: string): string {
  const { min, max } = loopBounds(placed.outline);
  const size = `${(max[0] - min[0]).toFixed(2)} × ${(max[1] - min[1]).toFixed(2)} mm, ${placed.outline.length} straights and arcs`;
  const rows = [
    ['outline', size],
    ...placed.openings.map(({ port, off, nearest }) => [
      `opening of ${port}`,
      `${openingWords(nearest)}, its middle ${off.toFixed(2)} mm from the port`,
    ]),
    ...placed.holes.map(({ centre: [x, y], radius }, k) => [
      `hole ${k + 1}`,
      `${(2 * radius).toFixed(2)} mm across, at ${x.toFixed(2)}, ${y.toFixed(2)} from the first port`,
    ]),
  ];
  const fit = placed.fit
    ? `By the ports: ${rigidWords(placed.rigid)}; openings lie ${placed.fit.mean.toFixed(2)} mm off the ports in the mean, ${placed.fit.worst.toFixed(2)} at most.`
    : `As asked: ${rigidWords(placed.rigid)}.`;
  const parts = [
    [`Found for flange ${placed.flange}`, columns(rows, ['left', 'left'])].join('\n'),
    fit,
    ...(notes.length > 0 ? [['To know', ...notes.map((note) => `  ${note}`)].join('\n')] : []),
    `Taken: ${taken}. Written to ${output}`,
  ];
  return `${parts.join('\n\n')}\n`;
}

function openingWords(opening: Opening): string {
  if (opening.shape === 'round') return `round, ${opening.diameter} mm`;
  const size = `${opening.width} × ${opening.height} mm`;
  return opening.shape === 'oval' ? `oval, ${size}` : `rounded rectangle, ${size}, corners ${opening.corner} mm`;
}

export const outlineJson = (placed: PlacedDrawing, notes: readonly string[], output: string) => ({
  flange: placed.flange,
  corners: placed.outline.length,
  openings: placed.openings.map(({ port, off, nearest, stray }) => ({ port, off, nearest, stray })),
  holes: placed.holes.map(({ centre, radius }) => ({ centre, diameter: 2 * radius })),
  others: placed.others.length,
  mirrored: placed.rigid.mirrored,
  turn: (placed.rigid.turn * 180) / Math.PI,
  shift: placed.rigid.shift,
  fit: placed.fit,
  notes,
  output,
});
