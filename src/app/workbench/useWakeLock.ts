/** Keeps the screen awake while it is wanted, where the browser can: it lets go whenever the page is put aside, so it is asked anew. */
import { useEffect } from 'react';

export const canStayAwake = (): boolean => typeof navigator !== 'undefined' && 'wakeLock' in navigator;

export function useWakeLock(on: boolean, onRefused: () => void): void {
  useEffect(() => {
    if (!on || !canStayAwake()) return;
    let lock: WakeLockSentinel | null = null;
    let ended = false;
    const ask = async () => {
      if (document.visibilityState !== 'visible' || (lock && !lock.released)) return;
      try {
        const got = await navigator.wakeLock.request('screen');
        if (ended) await got.release();
        else lock = got;
      } catch {
        // Refused: a battery that is low, a setting. The switch goes back, so that nobody relies on it.
        onRefused();
      }
    };
    void ask();
    document.addEventListener('visibilitychange', ask);
    return () => {
      ended = true;
      document.removeEventListener('visibilitychange', ask);
      void lock?.release().catch(() => {});
    };
  }, [on, onRefused]);
}
