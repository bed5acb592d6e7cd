/** What was there, what is there, and what came and went: mass in kg, energy in J, over pipes and vessels. */
import type { Account, RigRun } from '../report';
import type { Network, Stand } from '../scheme/step';

/** Notes what is there now; what it answers compares with it later. `inPipes`: kg and J. */
export function accountOf(
  { ends }: Network,
  inPipes: () => readonly [mass: number, energy: number],
): (stand: Stand) => Pick<RigRun, 'mass' | 'energy'> {
  const all = () => {
    const [mass, energy] = inPipes();
    return [
      ends.reduce((sum, end) => sum + end.mass, mass),
      ends.reduce((sum, end) => sum + end.energy, energy),
    ] as const;
  };
  const [firstMass, firstEnergy] = all();
  const outside = ends.filter((end) => end.outside).flatMap((end) => end.planes);
  const gone = (out: Float64Array) => outside.reduce((sum, plane) => sum + out[plane]!, 0);
  return ({ massOut, energyOut, heated }) => {
    const [mass, energy] = all();
    return {
      mass: balance(firstMass, mass, gone(massOut), 0),
      energy: balance(firstEnergy, energy, gone(energyOut), heated),
    };
  };
  function balance(initial: number, final: number, left: number, fromWalls: number): Account {
    return { initial, final, left, fromWalls, drift: (final - initial + left - fromWalls) / initial };
  }
}
