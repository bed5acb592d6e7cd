/** Says quietly that parts are being made, once that takes longer than one would notice; and why they could not be. */
import { useEffect, useState } from 'react';
import { useMade } from '../../made/state';

/** ms */
const NOTICED = 300;

export function MakingLine() {
  const making = useMade((s) => s.making);
  const error = useMade((s) => s.error);
  const isLong = useHasLasted(making !== null);
  if (making !== null && isLong) return <p className="viewport-making">Making parts: {making}…</p>;
  if (making === null && error !== null) return <p className="viewport-making">Parts were not made: {error}</p>;
  return null;
}

function useHasLasted(on: boolean): boolean {
  const [lasted, setLasted] = useState(false);
  useEffect(() => {
    if (!on) return;
    const timer = setTimeout(() => setLasted(true), NOTICED);
    return () => {
      clearTimeout(timer);
      setLasted(false);
    };
  }, [on]);
  return lasted;
}
