/** Service points and sensors that are added: where they usually are, each with a name of its own, and a design that still reads. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { addSensor, addService } from '../../../../shared/design/edit';
import { parseDesign } from '../../../../shared/design/parse';
import type { Design, SensorKind, ServiceKind } from '../../../../shared/design/types';

const {
  service: _,
  sensors: __,
  ...bare
} = JSON.parse(
  readFileSync(new URL('../../../../public/examples/v8-left-bank-4-1.evenrun.json', import.meta.url), 'utf8'),
) as Design;
const bank: Design = bare;
const empty: Design = {
  format: 'evenrun-design',
  version: 1,
  ports: [],
  tubes: {},
  tooling: {},
  merges: [],
  runners: [],
  groups: {},
};

const serve = (design: Design, kind: ServiceKind): Design => {
  const { edited } = addService(design, kind);
  if (!edited.ok) throw new Error(edited.refusal.allowed);
  return edited.design;
};
const sense = (design: Design, kind: SensorKind): Design => {
  const { edited } = addSensor(design, kind);
  if (!edited.ok) throw new Error(edited.refusal.allowed);
  return edited.design;
};

describe('service points', () => {
  it.each(['spark-plug', 'oil-filter', 'starter', 'dipstick', 'bolt'] as const)('%s: is added twice, apart', (kind) => {
    for (const from of [bank, empty]) {
      const design = serve(serve(from, kind), kind);
      const [a, b] = design.service!;
      expect(a!.id).not.toBe(b!.id);
      expect(Math.hypot(...a!.position.map((x, i) => x - b!.position[i]!))).toBeGreaterThan(50);
      expect(Math.hypot(...a!.direction)).toBeGreaterThan(0.5);
      expect(parseDesign(JSON.stringify(design))).toBeTruthy();
    }
  });

  it('a plug stands beside each port, one after another', () => {
    let design = bank;
    for (const _ of bank.ports) design = serve(design, 'spark-plug');
    design.service!.forEach(({ position }, i) => {
      expect(position[0]).toBeCloseTo(bank.ports[i]!.position[0], 6);
    });
  });
});

describe('sensors', () => {
  it('an oxygen sensor goes into the collector, a probe near each port in turn', () => {
    const first = sense(bank, 'oxygen').sensors![0]!;
    expect(first.on).toEqual({ merge: 'left collector' });
    let design = bank;
    for (const _ of bank.runners) design = sense(design, 'temperature');
    expect(design.sensors!.map(({ on }) => on)).toEqual(bank.runners.map(({ id }) => ({ runner: id })));
    expect(new Set(design.sensors!.map(({ id }) => id)).size).toBe(4);
    expect(parseDesign(JSON.stringify(design))).toBeTruthy();
  });

  it('needs something to stand in', () => {
    expect(addSensor(empty, 'oxygen').edited).toMatchObject({ ok: false });
  });
});
