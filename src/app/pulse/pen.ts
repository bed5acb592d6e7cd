/** What everything that draws onto the picture's canvas shares. px. */

export type Pen = CanvasRenderingContext2D;

export function line(pen: Pen, x0: number, y0: number, x1: number, y1: number): void {
  pen.beginPath();
  pen.moveTo(x0, y0);
  pen.lineTo(x1, y1);
  pen.stroke();
}
