/** A number to work by, large, in the design's unit and as fine as tape and dial read; or words in its place. */
import type { Design } from '../../../shared/design/types';
import { settingsOf } from '../../../shared/stock/workshop';
import { lengthParts } from '../../../shared/units';
import { dialNumber, tapeFigure } from '../../shop/bench/figures';
import type { Figure } from '../../shop/bench/step';

export type Said = { readonly number: string; readonly unit: string };

export function saidOf(figure: Figure, { workshop, display = 'mm' }: Design): Said {
  const { tape, dial } = settingsOf(workshop);
  switch (figure.kind) {
    case 'length':
      return { number: tapeFigure(figure.value, { display, tape }), unit: display };
    case 'angle':
      return { number: dialNumber(figure.value, { dial }), unit: '°' };
    case 'size': {
      const { number, unit } = lengthParts(figure.value, display);
      return { number: number.replace(/\.?0+$/, ''), unit };
    }
    case 'count':
      return { number: String(figure.value), unit: '' };
    case 'words':
      return { number: figure.value, unit: '' };
  }
}

/** In a sentence: `34.5° clockwise`. */
export function figureWords(figure: Figure, design: Design): string {
  const { number, unit } = saidOf(figure, design);
  const way = 'way' in figure && figure.way ? ` ${figure.way}` : '';
  return `${number}${unit === '' || unit === '°' ? unit : ` ${unit}`}${way}`;
}

export function FigureView({ figure, design }: { readonly figure: Figure; readonly design: Design }) {
  const { number, unit } = saidOf(figure, design);
  return (
    <div className="bench-figure">
      <dt>{figure.name}</dt>
      <dd>
        <span className="bench-number">{number}</span>
        {unit !== '' && <span className="bench-unit">{unit === '°' ? unit : ` ${unit}`}</span>}
        {'way' in figure && figure.way && <span className="bench-way">{figure.way}</span>}
      </dd>
    </div>
  );
}
