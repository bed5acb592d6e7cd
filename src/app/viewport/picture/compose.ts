/**
 * The picture as it is saved: the drawn view, with the names and numbers that lie over it as text drawn again, the title,
 * and where there is one scale a bar that shows it. Pixels of the view times `factor`.
 */
import type { Display } from '../../../../shared/design/types';
import { formatLength, MM_PER_INCH } from '../../../../shared/units';

export type Frame = {
  readonly view: HTMLCanvasElement;
  /** The page's element that the view fills, with its labels. */
  readonly page: HTMLElement;
  readonly factor: number;
  readonly background: string;
  readonly ink: string;
  readonly title: string;
  readonly display: Display;
  /** Pixels of the page a millimetre; null in perspective, which has no one scale. */
  readonly pxPerMm: number | null;
};

export function composePicture(frame: Frame): HTMLCanvasElement {
  const { view, page, factor } = frame;
  const box = page.getBoundingClientRect();
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(box.width * factor);
  canvas.height = Math.round(box.height * factor);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('This browser gives no canvas to draw the picture on.');
  context.fillStyle = frame.background;
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.drawImage(view, 0, 0, canvas.width, canvas.height);
  context.scale(factor, factor);
  for (const label of page.querySelectorAll<HTMLElement>('.viewport-label')) drawLabel(context, label, box);
  const { fontFamily } = getComputedStyle(page);
  context.fillStyle = frame.ink;
  context.textBaseline = 'middle';
  context.textAlign = 'left';
  context.font = `600 15px ${fontFamily}`;
  context.fillText(frame.title, 14, 20);
  context.font = `400 13px ${fontFamily}`;
  if (frame.pxPerMm) drawScale(context, frame, box.height, frame.pxPerMm);
  return canvas;
}

function drawLabel(context: CanvasRenderingContext2D, label: HTMLElement, page: DOMRect): void {
  const style = getComputedStyle(label);
  if (style.visibility === 'hidden') return;
  const box = label.getBoundingClientRect();
  const [x, y] = [box.left - page.left, box.top - page.top];
  context.beginPath();
  context.roundRect(x, y, box.width, box.height, Number.parseFloat(style.borderRadius) || 0);
  context.fillStyle = style.backgroundColor;
  context.fill();
  context.lineWidth = 1;
  context.strokeStyle = style.borderTopColor;
  context.stroke();
  let left = x + Number.parseFloat(style.borderLeftWidth) + Number.parseFloat(style.paddingLeft);
  const dot = label.querySelector('i');
  if (dot) {
    const spot = dot.getBoundingClientRect();
    context.beginPath();
    context.arc(spot.left - page.left + spot.width / 2, spot.top - page.top + spot.height / 2, spot.width / 2, 0, 7);
    context.fillStyle = getComputedStyle(dot).backgroundColor;
    context.fill();
    left = spot.right - page.left + Number.parseFloat(style.columnGap || '0');
  }
  context.fillStyle = style.color;
  context.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  context.textBaseline = 'middle';
  context.textAlign = dot ? 'left' : 'center';
  context.fillText(label.textContent ?? '', dot ? left : x + box.width / 2, y + box.height / 2);
}

/** About this much of the picture's height, rounded down to a length that one would choose. */
const BAR_SHARE = 0.3;

/** 1, 2 or 5 times a power of ten, at most `most`. */
export function roundLength(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  return ([5, 2, 1].find((k) => k * power <= most) ?? 1) * power;
}

function drawScale(context: CanvasRenderingContext2D, { display, ink }: Frame, height: number, pxPerMm: number): void {
  const unit = display === 'in' ? MM_PER_INCH : 1;
  const mm = roundLength((height * BAR_SHARE) / pxPerMm / unit) * unit;
  const [left, bottom, long] = [14, height - 18, mm * pxPerMm];
  context.strokeStyle = ink;
  context.lineWidth = 1.6;
  context.beginPath();
  context.moveTo(left, bottom - 4);
  context.lineTo(left, bottom + 4);
  context.moveTo(left, bottom);
  context.lineTo(left + long, bottom);
  context.moveTo(left + long, bottom - 4);
  context.lineTo(left + long, bottom + 4);
  context.stroke();
  context.fillText(formatLength(mm, display, display === 'in' && mm < MM_PER_INCH ? 2 : 0), left + long + 8, bottom);
}
