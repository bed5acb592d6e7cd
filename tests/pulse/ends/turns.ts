/**
 * How many turns the root finders of the ends take, counted from outside by what they ask of waves: a loop over pressures asks one
 * wave `behind` again and again, one over speeds or around another loop asks `atVelocity` or `leave` once a turn. Never too few.
 */
import { vi } from 'vitest';
import { Wave } from '../../../src/pulse/ends/wave';

export function countTurns() {
  let most = 0;
  let row = 0;
  let last: Wave | null = null;
  const around = new Map<Wave, number>();
  const { behind } = Wave.prototype;
  const spies = [
    vi.spyOn(Wave.prototype, 'behind').mockImplementation(function (this: Wave, p: number) {
      row = this === last ? row + 1 : 1;
      last = this;
      most = Math.max(most, row);
      behind.call(this, p);
    }),
    ...(['atVelocity', 'leave'] as const).map((name) => {
      const own = Wave.prototype[name];
      return vi.spyOn(Wave.prototype, name).mockImplementation(function (this: Wave, value: number) {
        const turns = (around.get(this) ?? 0) + 1;
        around.set(this, turns);
        most = Math.max(most, turns);
        own.call(this, value);
        row = 0;
      });
    }),
  ];
  return {
    /** Of any loop so far. */
    most: () => most,
    end(): void {
      for (const spy of spies) spy.mockRestore();
    },
  };
}
