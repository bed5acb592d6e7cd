/** The room an element is given, px, as it changes; also of one that comes later, goes, and comes again. */
import { type RefCallback, useCallback, useState } from 'react';

export type Size = { readonly width: number; readonly height: number };

export function useSize<T extends Element>(): readonly [RefCallback<T>, Size] {
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  // As a ref, so that it follows whichever element is mounted: an effect would see only the one of the first rendering.
  const ref = useCallback((element: T) => {
    const take = () => {
      const { clientWidth: width, clientHeight: height } = element;
      setSize((was) => (was.width === width && was.height === height ? was : { width, height }));
    };
    take();
    const observer = new ResizeObserver(take);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [ref, size];
}
