/** What the page says of the engine is so: every field is named, and its numbers are those that are taken. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { engineShape } from '../../../shared/design/engineShape';
import { exhaustShape } from '../../../shared/design/exhaustShape';
import { burningOf } from '../../../src/pulse/engine/burning';
import { COMPONENTS, PORT_WALL, PULSATING } from '../../../src/pulse/engine/join';
import { eventProblem } from '../../../src/pulse/engine/setup/events';
import * as usual from '../../../src/pulse/engine/setup/usual';
import { mixture } from '../../../src/pulse/equations/mixture';
import { doubtsOf } from '../../../src/pulse/forecast/doubts';
import { HOTTEST_MIXTURE } from '../../../src/pulse/rig/limits';

const page = readFileSync('docs/engine.md', 'utf8').replaceAll('−', '-');

// biome-ignore lint/suspicious/noExplicitAny: a shape's insides, whatever they are
const unwrapped = (type: any): any => (type?.def?.innerType ? unwrapped(type.def.innerType) : type);

/** Names of all fields, those of fields in fields too. */
// biome-ignore lint/suspicious/noExplicitAny: as above
function namesIn(type: any): string[] {
  const shape = unwrapped(type)?.shape as Record<string, unknown> | undefined;
  return Object.entries(shape ?? {}).flatMap(([name, inner]) => [name, ...namesIn(inner)]);
}

test('every field is named', () => {
  const names = [...namesIn(engineShape), ...namesIn(exhaustShape)];
  expect(names).toContain('throttleDiameter');
  expect(names).toContain('silencer');
  for (const name of names) expect(page, name).toContain(`\`${name}\``);
});

test.each([
  ['rod', `${usual.ROD_PER_STROKE} × stroke`],
  ['speeds', `${usual.SPEEDS[0]} to ${usual.SPEEDS[1]}`],
  [
    'valves',
    `intake ${usual.VALVE_PER_BORE.intake.several} × bore, exhaust ${usual.VALVE_PER_BORE.exhaust.several} × bore`,
  ],
  ['one valve', `of one alone ${usual.VALVE_PER_BORE.intake.one} and ${usual.VALVE_PER_BORE.exhaust.one}`],
  ['lifts', `${usual.LIFT_PER_DIAMETER.intake} × diameter, exhaust ${usual.LIFT_PER_DIAMETER.exhaust}`],
  ['intake events', `intake ${usual.EVENTS.intake.join(' and ')}`],
  ['exhaust events', `exhaust ${usual.EVENTS.exhaust.join(' and ')}`],
  ['runner', `| ${usual.RUNNER_LENGTH} |`],
  ['runner’s bore', `${usual.RUNNER_PER_VALVES} of the area of the intake valves`],
  ['plenum', `${usual.PLENUM_PER_DISPLACEMENT} × displacement`],
  ['throttle', `air at ${usual.THROTTLE_AIR_SPEED} m/s`],
  ['throttle flow', `${usual.THROTTLE_COEFFICIENT} of the throttle's area flows`],
  ['intake walls', `${usual.INTAKE_WALL_TEMPERATURE} K and rough by ${usual.INTAKE_ROUGHNESS} mm`],
  ['mixture', `| ${usual.LAMBDA} |`],
  ['middle', `half is burnt | ${usual.BURN_MIDDLE} |`],
  ['duration', `from 0 to 100 % | ${usual.BURN_DURATION} |`],
  ['efficiency', `what is released | ${usual.BURN_EFFICIENCY} |`],
  ['fuel', `${usual.FUEL.heat.toFixed(1)} MJ/kg, ${usual.FUEL.airPerFuel} kg of air`],
  ['walls', `Walls at ${usual.CYLINDER_WALL_TEMPERATURE} K`],
  [
    'friction',
    `${usual.FRICTION.constant} bar + ${usual.FRICTION.perPeak} × peak pressure + ${usual.FRICTION.perSpeed} × piston speed + ${usual.FRICTION.perSquare} × its square`,
  ],
  ['heat to exhaust walls', `the Reynolds–Colburn analogy, times ${PULSATING}:`],
  ['port walls', `walls of the port in the head: ${PORT_WALL} K`],
  ['air', `(left out: ${usual.AIR.pressure}) and \`temperature\` in °C (left out: ${usual.AIR.temperature})`],
])('the usual %s is what the page says', (_, words) => {
  expect(page).toContain(words);
});

test('every word of doubt is explained', () => {
  const extremes = { hottest: 1e4, fastest: 1, where: 'r1' };
  const wrong = { isSettled: false, drift: 0.1, stored: 0, cycles: 24, extremes, pistonSpeed: 40, cell: 0.05 };
  const kinds = doubtsOf(wrong).map(({ kind }) => kind);
  expect(kinds).toHaveLength(5);
  for (const kind of kinds) expect(page).toContain(`\n| \`${kind}\` | `);
  expect(page).toContain(`known for, ${HOTTEST_MIXTURE} K`);
});

test('the mixture that releases most is where the page says, by as much as it says', () => {
  const fuel = { heat: 1e6 * usual.FUEL.heat, airPerFuel: usual.FUEL.airPerFuel };
  const burn = { middle: 8, duration: 60, efficiency: 0.95 };
  const released = (lambda: number) => burningOf(mixture(COMPONENTS), { ...fuel, lambda }, burn).released;
  const most = [0.8, 0.85, 0.88, 0.9, 0.95, 0.98, 1, 1.02, 1.05].reduce((a, b) => (released(b) > released(a) ? b : a));
  const [, at, rich, nearly, nearer] = page.match(
    /most torque at `lambda` (\S+), (\S+) % more than at 0\.88 and (\S+) % more than at (\S+);/,
  )!;
  expect(most).toBe(Number(at));
  expect(100 * (released(most) / released(0.88) - 1)).toBeCloseTo(Number(rich), 1);
  expect(100 * (released(most) / released(Number(nearer)) - 1)).toBeCloseTo(Number(nearly), 1);
});

test('the events in its table are let through, and what it says of other conventions is recognised', () => {
  for (const angle of [-232, -12, 10, 228]) expect(page).toContain(`**${angle}**`);
  expect(eventProblem('', 'intake', [-12, 228], 'events')).toBeNull();
  expect(eventProblem('', 'exhaust', [-232, 10], 'events')).toBeNull();
  expect(eventProblem('', 'intake', [12, 48], 'events')!.allowed).toContain('opens -12, closes 228');
  expect(eventProblem('', 'intake', [108, 240], 'events')!.allowed).toContain('a lobe centre and a duration');
  expect(eventProblem('', 'exhaust', [111, 242], 'events')!.allowed).toContain('opens -232, closes 10');
  expect(eventProblem('', 'exhaust', [128, 370], 'events')!.allowed).toContain('firing top dead centre');
});
