/** Puts places on the page that are worked out anew at every step: only what is another than before is written. */

const written = new WeakMap<Element, Map<string, string>>();

/** Whether `value` is another than was put there last. */
function isNews(node: Element, name: string, value: string): boolean {
  let own = written.get(node);
  if (!own) {
    own = new Map();
    written.set(node, own);
  }
  if (own.get(name) === value) return false;
  own.set(name, value);
  return true;
}

/** For attributes that nobody else sets. */
export function putAttribute(node: Element, name: string, value: string): void {
  if (isNews(node, name, value)) node.setAttribute(name, value);
}

/** For styles that nobody else sets. */
export function putStyle(node: HTMLElement | SVGElement, name: string, value: string): void {
  if (isNews(node, `style ${name}`, value)) node.style.setProperty(name, value);
}

export const putVisible = (node: HTMLElement | SVGElement, visible: boolean): void =>
  putStyle(node, 'visibility', visible ? 'visible' : 'hidden');
