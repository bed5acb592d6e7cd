/** Which stands of an arm a ball bars: the closed form against looking at every stand by itself, at random. mm, radians. */
import { expect, it } from 'vitest';
import { toArm } from '../../../geometry/reach/judge';
import { type Arm, eachStand, freeRuns, STAND, STANDS, shadow } from '../../../geometry/reach/swing';
import { random } from '../../random';

const SEED = 4401;

it(`agrees with the distance at each stand, 3,000 balls, seed ${SEED}`, () => {
  const draw = random(SEED);
  let some = 0;
  let wrong = 0;
  for (let n = 0; n < 3000; n++) {
    const flat = n % 3 === 0;
    const arm: Arm = {
      height: draw.between(0, 60),
      rise: flat ? 0 : draw.between(0, 0.4),
      length: draw.between(10, 220),
      radius: draw.between(2, 15),
      ...(flat && { flat: draw.between(1, 6) }),
    };
    const [rho, z, theta] = [draw.between(0, 260), draw.between(-30, 130), draw.between(-Math.PI, Math.PI)];
    const ball = draw.between(1, 30);
    const half = shadow(arm, rho, z, ball);
    const barred = new Uint8Array(STANDS);
    eachStand(theta, half, (k) => {
      barred[k] = 1;
    });
    for (let k = 0; k < STANDS; k++) {
      const gap = toArm(arm, rho, theta - k * STAND, z) - ball;
      if (Math.abs(gap) > 1e-6 && (barred[k] === 1) !== gap < 0) wrong++;
    }
    if (half > 0 && half < Math.PI) some++;
  }
  expect(wrong).toBe(0);
  expect(some).toBeGreaterThan(300);
});

it('the tip of the longest handle moves less than 3 mm between two stands', () => {
  expect(STAND * 250).toBeLessThan(3);
});

it('free runs go on past the first stand', () => {
  const taken = new Uint8Array(STANDS);
  expect(freeRuns(taken)).toEqual([{ first: 0, count: STANDS }]);
  taken.fill(1, 10, 20);
  taken[100] = 1;
  expect(freeRuns(taken)).toEqual([
    { first: 20, count: 80 },
    { first: 101, count: STANDS - 101 + 10 },
  ]);
});
