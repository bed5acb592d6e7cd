/** The room an element is given, px, as it changes. */
import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

export type Size = { readonly width: number; readonly height: number };

export function useSize<T extends Element>(): readonly [RefObject<T | null>, Size] {
  const ref = useRef<T>(null);
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const take = (width: number, height: number) =>
      setSize((was) => (was.width === width && was.height === height ? was : { width, height }));
    take(element.clientWidth, element.clientHeight);
    const observer = new ResizeObserver(() => take(element.clientWidth, element.clientHeight));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
