/** Nothing to see: keeps the answers up to date while it is there. */
import { useRoom } from './useRoom';

export function Watch() {
  useRoom();
  return null;
}
