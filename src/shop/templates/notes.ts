/** What has to be known to use a template, in words: which surface, how wide and why, where the seam lies, what the ordinates are. */
import { extremes, type WrapCut } from '../../../geometry';
import type { Display } from '../../../shared/design/types';
import { formatLength } from '../../../shared/units';
import type { Strip } from './strip';

export function templateNotes(cut: WrapCut, strip: Strip, paperThickness: number, display: Display): string[] {
  const length = (mm: number): string => formatLength(mm, display);
  const { low, width } = strip;
  const { highest, lowest, max, min } = extremes(cut.height, cut.corners);
  // They seldom fall on a station, so whoever marks by hand needs them in figures.
  const places = (name: string, angles: readonly number[], height: number): string =>
    `${name} ${length(height)}, at ${angles.map((a) => length((a / (2 * Math.PI)) * width)).join(' and ')} from the left edge.`;
  return [
    `Tube ${length(cut.outsideDiameter)} outside, wall ${length(cut.wall)}. ${
      cut.measuredOn === 'outside'
        ? 'The curve is of its OUTSIDE (OD).'
        : 'The curve is of its BORE (ID), carried out square to the axis: point the cutter at the axis all round.'
    }`,
    `Paper ${length(paperThickness)} thick: from the left edge to the glue line 3.1416 × (OD + paper) = ${length(width)}.`,
    `Wrap it printed side out, SCRAP toward the cut, and glue the left edge down on the dashed line. Seam: ${cut.seam}.`,
    `Figures up the stations: ${display}, from the square line to the cut.${
      low === 0
        ? ' The lower edge is the square line.'
        : low > 0
          ? ` The lower edge lies ${length(low)} from the square line toward the cut: scribe it round the tube first.`
          : ` The square line is drawn ${length(-low)} above the lower edge.`
    }`,
    `${places('HEEL', highest, max)} ${places('CROTCH', lowest, min)}`,
    ...cut.notes,
  ];
}
