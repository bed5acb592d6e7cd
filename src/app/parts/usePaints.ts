/** The runners' paints in the theme in force. */
import { useMemo } from 'react';
import { type Paint, paintsOf, useTheme } from '../colours';
import { useDocument } from '../document';

const NONE: ReadonlyMap<string, Paint> = new Map();

export function usePaints(): ReadonlyMap<string, Paint> {
  const theme = useTheme();
  const design = useDocument((s) => s.design);
  return useMemo(() => (design ? paintsOf(design, theme) : NONE), [design, theme]);
}
