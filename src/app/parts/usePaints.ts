/** The runners' paints in the theme in force. */
import { type Paint, paintsOf, useTheme } from '../colours';
import { useDocument } from '../document';

const NONE: ReadonlyMap<string, Paint> = new Map();

export function usePaints(): ReadonlyMap<string, Paint> {
  const theme = useTheme();
  return useDocument((s) => (s.design ? paintsOf(s.design, theme) : NONE));
}
