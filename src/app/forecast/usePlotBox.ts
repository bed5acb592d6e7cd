/** The room that a plot is drawn in, read by the pointer and by keys: what all plots of this page do alike. px */
import { type KeyboardEvent, type PointerEvent, type RefCallback, useState } from 'react';
import { type Size, useSize } from '../pulse/useSize';

type Doing = {
  /** What the plot is, and what the arrow keys do in it. */
  readonly label: string;
  /** Where the pointer is, from the box's own corner. */
  readonly onPoint?: (x: number, y: number) => void;
  /** A mouse has left; a finger that lifts leaves what it has read. */
  readonly onLeave?: () => void;
  /** Whether the key was one of the plot's. `far`: with Shift. */
  readonly onKey: (key: string, far: boolean) => boolean;
};

export type PlotBox = {
  readonly size: Size;
  /** What is read was last moved by keys: then it is also read aloud. */
  readonly byKeys: boolean;
  readonly props: {
    readonly ref: RefCallback<HTMLDivElement>;
    readonly role: 'application';
    readonly tabIndex: 0;
    readonly 'aria-label': string;
    readonly onPointerDown: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerMove: (event: PointerEvent<HTMLElement>) => void;
    readonly onPointerLeave: (event: PointerEvent<HTMLElement>) => void;
    readonly onKeyDown: (event: KeyboardEvent) => void;
  };
};

export function usePlotBox({ label, onPoint, onLeave, onKey }: Doing): PlotBox {
  const [ref, size] = useSize<HTMLDivElement>();
  const [byKeys, setByKeys] = useState(false);
  const point = ({ currentTarget, clientX, clientY }: PointerEvent<HTMLElement>) => {
    if (!onPoint) return;
    const { left, top } = currentTarget.getBoundingClientRect();
    setByKeys(false);
    onPoint(clientX - left, clientY - top);
  };
  return {
    size,
    byKeys,
    props: {
      ...{ ref, role: 'application', tabIndex: 0, 'aria-label': label, onPointerDown: point, onPointerMove: point },
      onPointerLeave: ({ pointerType }) => pointerType === 'mouse' && onLeave?.(),
      onKeyDown(event) {
        if (event.ctrlKey || event.metaKey || event.altKey || !onKey(event.key, event.shiftKey)) return;
        event.preventDefault();
        setByKeys(true);
      },
    },
  };
}
