/** The small drawing of a step. All are drawn on a sheet of 320 units, which is never shown smaller than that many pixels. */
import type { Drawing } from '../../../shop/bench/step';
import { MarksDrawing } from './MarksDrawing';
import { PieceDrawing } from './PieceDrawing';
import { PlateDrawing } from './PlateDrawing';
import { TurnDrawing } from './TurnDrawing';

export function StepDrawing({ drawing }: { readonly drawing: Drawing }) {
  switch (drawing.kind) {
    case 'piece':
      return <PieceDrawing {...drawing} />;
    case 'turn':
      return <TurnDrawing {...drawing} />;
    case 'marks':
      return <MarksDrawing {...drawing} />;
    case 'plate':
      return <PlateDrawing points={drawing.points} diameter={drawing.diameter} />;
  }
}
