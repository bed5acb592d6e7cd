/**
 * SVG of a drawing: width and height in mm and a view box in mm, so that any program opens it true size. Curves stay lines and
 * arcs, text stays text. Same drawing, same bytes.
 */
import type { Curve, Drawing, Group, Item, Text } from '../drawing/drawing';
import { drawnEdges } from '../drawing/drawnEdges';

/** Ten nanometres: far below any printer, and still short. */
const DECIMALS = 5;

export function writeSvg({ width, height, items }: Drawing, title: string): string {
  const clips: string[] = [];
  const body = items.map((item) => element(item, clips, '  ')).join('');
  const defs = clips.length > 0 ? `  <defs>\n${clips.join('')}  </defs>\n` : '';
  return (
    `<?xml version="1.0" encoding="UTF-8"?>\n` +
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}" ` +
    `font-family="Helvetica, Arial, 'Liberation Sans', sans-serif" fill="none" stroke-linejoin="round">\n` +
    `  <title>${escaped(title)}</title>\n${defs}` +
    `  <rect width="${num(width)}" height="${num(height)}" fill="#fff"/>\n${body}</svg>\n`
  );
}

function element(item: Item, clips: string[], indent: string): string {
  if (item.kind === 'curve') return `${indent}${path(item)}\n`;
  if (item.kind === 'text') return `${indent}${words(item)}\n`;
  return groupOf(item, clips, indent);
}

function groupOf({ move, clip, items }: Group, clips: string[], indent: string): string {
  const inside = items.map((item) => element(item, clips, `${indent}  `)).join('');
  const moved = `${indent}<g transform="translate(${num(move[0])} ${num(move[1])})"`;
  if (!clip) return `${moved}>\n${inside}${indent}</g>\n`;
  const id = `clip${clips.length + 1}`;
  const { left, top, right, bottom } = clip;
  clips.push(
    `    <clipPath id="${id}"><rect x="${num(left)}" y="${num(top)}" width="${num(right - left)}" height="${num(bottom - top)}"/></clipPath>\n`,
  );
  return `${indent}<g clip-path="url(#${id})">\n${moved}>\n${inside}${indent}</g>\n${indent}</g>\n`;
}

function path(curve: Curve): string {
  const { vertices, closed, stroke, fill, name } = curve;
  let d = `M${num(vertices[0]![0])} ${num(vertices[0]![1])}`;
  for (const { to, arc } of drawnEdges(curve)) {
    const end = `${num(to[0])} ${num(to[1])}`;
    if (!arc) d += `L${end}`;
    else
      d += `A${num(arc.radius)} ${num(arc.radius)} 0 ${Math.abs(arc.turn) > Math.PI ? 1 : 0} ${arc.turn > 0 ? 1 : 0} ${end}`;
  }
  if (closed) d += 'Z';
  const paint = [
    name === undefined ? '' : ` data-name="${escaped(name)}"`,
    fill ? ` fill="${fill === 'white' ? '#fff' : '#000'}"` : '',
    stroke ? ` stroke="#000" stroke-width="${num(stroke.width)}"` : '',
    stroke?.dash ? ` stroke-dasharray="${stroke.dash.map(num).join(' ')}"` : '',
  ];
  return `<path d="${d}"${paint.join('')}/>`;
}

function words({ text, at, size, anchor, bold, turn }: Text): string {
  const [x, y] = [num(at[0]), num(at[1])];
  const style = [
    anchor === 'start' ? '' : ` text-anchor="${anchor}"`,
    bold ? ' font-weight="bold"' : '',
    turn === 0 ? '' : ` transform="rotate(${num(-turn)} ${x} ${y})"`,
  ];
  return `<text x="${x}" y="${y}" font-size="${num(size)}" fill="#000"${style.join('')}>${escaped(text)}</text>`;
}

function num(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`A drawing cannot hold the number ${value}`);
  return String(Number(value.toFixed(DECIMALS)) + 0);
}

/** Characters that XML cannot hold at all are left out. */
const escaped = (words: string): string =>
  words
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
