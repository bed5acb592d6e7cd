/** Where the ports stand: the usual places of an engine, turned and moved as asked. mm; +X along the crankshaft, +Z up. */
import type { BankForm, EngineForm } from '../../../shared/engine/form';
import type { Vec3 } from '../../../shared/vec3';
import type { Wish } from './wish';

type Placing = Pick<Wish, 'firstAt' | 'side' | 'height' | 'reach' | 'banks'>;

/** @param form as newForm answers it: bank 1 on +Y, cylinder 1 at the low end of X */
export const placedBanks = (form: EngineForm, wish: Placing): BankForm[] =>
  form.banks.map((bank) => placed(bank, wish));

function placed(bank: BankForm, { firstAt, side, height, reach, banks }: Placing): BankForm {
  const [x, y] = bank.firstPort;
  const turn = firstAt === 'low' ? 1 : -1;
  // Two banks look both ways already.
  const mirror = banks === 1 ? side : 1;
  const outward = Math.sign(banks === 1 ? 1 : y);
  const flip = ([a, b, c]: Vec3): Vec3 => [a, mirror * b + 0, c];
  return {
    ...bank,
    firstPort: [turn * x + 0, mirror * (reach === null ? y : outward * reach) + 0, height],
    pitch: turn * bank.pitch,
    direction: flip(bank.direction),
    up: flip(bank.up),
  };
}
