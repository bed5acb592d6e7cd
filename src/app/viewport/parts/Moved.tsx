/** Its parts where a matrix takes them. Always there, so that what starts to move is not made anew. */
import type { ReactNode } from 'react';
import type { Matrix4 } from 'three';

export function Moved({ by, children }: { readonly by: Matrix4; readonly children: ReactNode }) {
  return (
    <group matrix={by} matrixAutoUpdate={false} matrixWorldNeedsUpdate>
      {children}
    </group>
  );
}
