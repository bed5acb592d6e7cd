/** A plot as it is seen, as a PNG: what is painted and what is drawn over it, on its own ground, with a title above. */
import { saveBlob } from '../../actions/save';
import { fontOf } from '../../pulse/drawPicture';
import { type Theme, TOKENS } from '../../theme';

const DENSITY = 2;
const HEAD = 34;
const EDGE = 12;

/** What a drawing's parts are given by style sheets: alone in a picture it has none. */
const LOOKS = [
  ...['fill', 'fill-opacity', 'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-opacity', 'stroke-linecap'],
  ...['stroke-linejoin', 'paint-order', 'opacity', 'visibility', 'display', 'text-anchor', 'dominant-baseline'],
  ...['font-family', 'font-size', 'font-weight', 'font-style', 'font-variant-numeric', 'letter-spacing'],
] as const;

/** @param plot holds a canvas, a drawing, or one over the other */
export async function savePlot(plot: Element, title: string, name: string, theme: Theme): Promise<string | null> {
  const { width, height } = plot.getBoundingClientRect();
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('This browser gives no room to draw it in.');
  canvas.width = Math.round(DENSITY * (width + 2 * EDGE));
  canvas.height = Math.round(DENSITY * (height + HEAD + EDGE));
  pen.scale(DENSITY, DENSITY);
  pen.fillStyle = TOKENS[theme].sheet;
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.fillStyle = TOKENS[theme].ink;
  pen.font = fontOf(650);
  pen.textBaseline = 'middle';
  pen.fillText(title, EDGE, HEAD / 2);
  for (const layer of plot.children) {
    if (layer instanceof HTMLCanvasElement) pen.drawImage(layer, EDGE, HEAD, width, height);
    if (layer instanceof SVGSVGElement) pen.drawImage(await pictureOf(layer), EDGE, HEAD, width, height);
  }
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob) throw new Error('This browser could not write it as PNG.');
  return saveBlob(blob, `${name}.png`, 'Picture', '.png');
}

/** The drawing with its looks written into it. */
async function pictureOf(drawing: SVGSVGElement): Promise<HTMLImageElement> {
  const copy = drawing.cloneNode(true) as SVGSVGElement;
  const copies = copy.querySelectorAll<SVGElement>('*');
  drawing.querySelectorAll('*').forEach((part, k) => {
    const seen = getComputedStyle(part);
    for (const look of LOOKS) copies[k]!.style.setProperty(look, seen.getPropertyValue(look));
  });
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  const style = document.createElementNS('http://www.w3.org/2000/svg', 'style');
  style.textContent = await typefaces();
  copy.prepend(style);
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(new XMLSerializer().serializeToString(copy))}`;
  await image.decode();
  return image;
}

const urlIn = /url\("?([^")]+)"?\)/;

/** The page's typefaces with their shapes: a picture may fetch nothing. Without them words would be of other widths. */
async function typefaces(): Promise<string> {
  const rules = [...document.styleSheets]
    .flatMap((sheet) => [...sheet.cssRules].map((rule) => ({ rule, base: sheet.href ?? document.baseURI })))
    .filter(({ rule }) => rule instanceof CSSFontFaceRule);
  const whole = await Promise.all(
    rules.map(async ({ rule: { cssText }, base }) => {
      const [, url] = urlIn.exec(cssText) ?? [];
      if (url === undefined) return '';
      // What cannot be read is done without.
      const data = await fetch(new URL(url, base)).then(readAsUrl, () => null);
      return data === null ? '' : cssText.replace(urlIn, `url("${data}")`);
    }),
  );
  return whole.join('\n');
}

async function readAsUrl(response: Response): Promise<string | null> {
  if (!response.ok) return null;
  const blob = await response.blob();
  return new Promise((done) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () => done(null);
    reader.readAsDataURL(blob);
  });
}
