/**
 * Where the header stands in the picture while its movement is looked at: turned about the engine's axis with all that is fixed
 * to the engine, its tubes and collectors grown with heat. Nothing of the design changes. mm, the design's frame, in which the
 * vehicle stands still.
 */
import { useMemo } from 'react';
import { Matrix4, Quaternion, Vector3 } from 'three';
import { hotGrowth, motionOf } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { useLeaf } from '../leaf';
import { useRoomLook } from './look';

export type Stance = {
  /** Of what is fixed to the engine. */
  readonly turn: Matrix4;
  /** Of a tube or collector of this material, before it is turned. */
  readonly grown: (material: string | undefined) => Matrix4;
};

const STILL = new Matrix4();
export const AT_REST: Stance = { turn: STILL, grown: () => STILL };

/** Whether it is moved in the picture at all. Only while the leaf with its sliders is on top. */
export function useIsPosed(): boolean {
  const onTop = useLeaf((s) => s.leaf === 'room');
  const posed = useRoomLook((s) => s.posed);
  return onTop && posed !== null && (posed.roll !== 0 || posed.heat !== 0);
}

export function useStance(design: Design): Stance {
  const isPosed = useIsPosed();
  const posed = useRoomLook((s) => s.posed);
  return useMemo(
    () => (isPosed && posed ? stanceOf(design, posed.roll, posed.heat) : AT_REST),
    [isPosed, posed, design],
  );
}

/** @param roll degrees @param heat from 0 to 1 */
export function stanceOf(design: Design, roll: number, heat: number): Stance {
  const motion = motionOf(design);
  if (!motion) return AT_REST;
  const { rock } = motion;
  const middle = new Vector3(...(motion.heat?.middle ?? [0, 0, 0]));
  const known = new Map<string | undefined, Matrix4>();
  return {
    turn: rock
      ? about(
          new Vector3(...rock.position),
          new Quaternion().setFromAxisAngle(new Vector3(...rock.axis), (roll * Math.PI) / 180),
          1,
        )
      : STILL,
    grown: (material) => {
      const own = known.get(material) ?? about(middle, new Quaternion(), 1 + heat * hotGrowth(motion, material));
      known.set(material, own);
      return own;
    },
  };
}

/** A turn and a growth that leave one place where it is. */
function about(place: Vector3, turn: Quaternion, size: number): Matrix4 {
  const moved = place.clone().multiplyScalar(size).applyQuaternion(turn);
  return new Matrix4().compose(place.clone().sub(moved), turn, new Vector3(size, size, size));
}
