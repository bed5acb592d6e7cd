/** First headers from forms: complete documents that hold every rule, the same each time, and honest where they do not. */
import { describe, expect, test } from 'vitest';
import { check, draftHeader } from '../../../geometry';
import { parseDesign } from '../../../shared/design/parse';
import { writeDesign } from '../../../shared/design/write';
import { type EngineAnswers, newForm } from '../../../shared/engine/formDefaults';
import { formProblems } from '../../../shared/engine/formProblems';
import { random } from '../../random';

const ENGINES: Readonly<Record<string, EngineAnswers>> = {
  'a single': { cylinders: 1 },
  'a twin': { cylinders: 2 },
  'a three': { cylinders: 3 },
  'a four, 4-1': { cylinders: 4 },
  'a four, 4-2-1': { cylinders: 4, arrangement: 'pairs-then-one' },
  'a five': { cylinders: 5 },
  'a straight six, 6-2': { cylinders: 6 },
  'a straight six, 6-2-1': { cylinders: 6, arrangement: 'threes-then-one', collectors: [[1, 2, 3, 4, 5, 6]] },
  'a flat four': { cylinders: 4, banks: 2 },
  'both banks of an eight, 4-1': { cylinders: 8 },
  'both banks of an eight, 4-2-1': { cylinders: 8, arrangement: 'pairs-then-one' },
  'a four of 800 mm': { cylinders: 4, length: 800 },
};

describe.each(Object.entries(ENGINES))('%s', (_, answers) => {
  const form = newForm(answers);
  const { design, report, pairs } = draftHeader(form);

  test('holds every rule, lengths equal, once written and read', () => {
    expect(formProblems(form)).toEqual([]);
    const read = parseDesign(writeDesign(design));
    expect(check(read).problems).toEqual([]);
    expect(report.ok).toBe(true);
    expect(report.runners).toHaveLength(answers.cylinders + pairs.length);
    for (const { spread } of report.groups) expect(spread).toBeLessThan(0.001);
  });

  test('has a port, a flange and a stud hole clear of every opening', () => {
    const ports = design.ports;
    expect(ports.map((p) => p.cylinder).sort((a, b) => a - b)).toEqual(
      Array.from({ length: answers.cylinders }, (__, i) => i + 1),
    );
    expect(design.flanges!.flatMap((f) => f.ports).sort()).toEqual(ports.map((p) => p.id).sort());
    for (const { fasteners } of design.flanges!)
      for (const { position, hole } of fasteners!)
        for (const port of ports) {
          const away = Math.hypot(...position.map((x, k) => x - port.position[k]!));
          expect(away).toBeGreaterThan(form.primary.tube.outsideDiameter / 2 + hole / 2);
        }
  });
});

test('the same form gives the same bytes', () => {
  const form = newForm({ cylinders: 4, arrangement: 'pairs-then-one' });
  expect(writeDesign(draftHeader(form).design)).toBe(writeDesign(draftHeader(form).design));
});

test('a length out of reach: drawn at the nearest found, and said', () => {
  const { design, report, notes } = draftHeader(newForm({ cylinders: 4, length: 300 }));
  expect(report.ok).toBe(true);
  const { length } = design.groups.primaries!;
  expect(length).toBeGreaterThan(300);
  expect(notes.join('\n')).toContain('Primaries of 300.00 mm are out of reach here: drawn at');
});

test('tooling that cannot do it: a best attempt, and what fails is said', () => {
  const form = newForm({ cylinders: 4 });
  const primary = { ...form.primary, tooling: { ...form.primary.tooling, maxBends: 1 } };
  const { design, report, notes } = draftHeader({ ...form, primary });
  expect(report.ok).toBe(false);
  expect(notes[0]).toMatch(/^Best attempt: not every rule holds\./);
  expect(parseDesign(writeDesign(design)).runners.every((r) => r.points)).toBe(true);
});

test('cancelled at once: still a valid document, and said', () => {
  const { design, notes } = draftHeader(newForm({ cylinders: 4 }), { cancelled: () => true });
  expect(parseDesign(writeDesign(design)).runners).toHaveLength(4);
  expect(notes[0]).toMatch(/^Stopped before the end/);
});

/** Invented engines: pitch, tube, port angle and collector drawn from a seed. */
function invented(seed: number) {
  const r = random(seed);
  const cylinders = [2, 3, 4, 4, 4, 6][r.whole(0, 5)]!;
  const form = newForm({
    cylinders,
    pitch: r.between(82, 115),
    outsideDiameter: r.between(34, 48),
    portAngle: r.between(0, 30),
    ...(cylinders === 4 && r() < 0.4 ? { arrangement: 'pairs-then-one' as const } : {}),
  });
  const collectors = form.collectors.map((c) => ({
    ...c,
    position: [
      c.position[0] + r.between(-60, 60),
      c.position[1] + r.between(-30, 60),
      c.position[2] + r.between(-80, 30),
    ] as const,
    axis: [r.between(-0.2, 0.8), r.between(-0.2, 0.2), -1] as const,
  }));
  return { ...form, collectors };
}

// Measured, of ordinary engines: a first drawing is no router, and stranger ones get a best attempt.
test('of 24 invented engines (seeds 1 to 24) all hold', () => {
  const held = Array.from({ length: 24 }, (_, i) => invented(i + 1))
    .filter((form) => formProblems(form).length === 0)
    .map((form) => draftHeader(form).report.ok);
  expect(held).toHaveLength(24);
  expect(held.filter((ok) => !ok)).toEqual([]);
});
