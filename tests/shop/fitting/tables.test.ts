/** Tables of the space, read back: every number as found, nothing that a design has nothing of. */
import { describe, expect, test } from 'vitest';
import { readCsv } from '../../../src/formats/csv/readCsv';
import { roomTables } from '../../../src/shop/fitting/tables';
import { DESIGN, GAPS, ROOM } from './made';

const tables = new Map(roomTables(DESIGN, ROOM).map(({ name, text }) => [name, text]));
const rows = (name: string) => readCsv(tables.get(name)!);

test('a design with everything has all five, the same every time', () => {
  expect([...tables.keys()]).toEqual(['clearances.csv', 'reach.csv', 'wrap.csv', 'sensors.csv', 'removal.csv']);
  expect(roomTables(structuredClone(DESIGN), structuredClone(ROOM))).toEqual(roomTables(DESIGN, ROOM));
});

test('a design with nothing has clearances and reach, which say that there is nothing', () => {
  expect(roomTables(DESIGN, {})).toEqual([
    { name: 'clearances.csv', text: 'between,and,kind,gap,required,margin,station,roll,heat,x,y,z\r\n' },
    { name: 'reach.csv', text: 'id,where,reach,tool,by,message\r\n' },
  ]);
});

test('every number has more than five decimals', () => {
  const numbers = [...tables.values()].flatMap((text) => text.match(/(?<=[,\n])-?\d+\.\d+(?=[,\r])/g) ?? []);
  expect(numbers.length).toBeGreaterThan(100);
  for (const number of numbers) expect(number).toMatch(/\.\d{5,}$/);
});

describe('clearances', () => {
  test('are the gaps in their order, with place and pose', () => {
    expect(rows('clearances.csv').map((r) => [r.between, r.and, r.kind])).toEqual(
      GAPS.map(({ between, kind }) => [...between, kind]),
    );
    rows('clearances.csv').forEach((row, i) => {
      const { gap, required, margin, at, pose } = GAPS[i]!;
      expect([row.gap, row.required, row.margin, row.roll, row.heat, row.x, row.y, row.z].map(Number)).toEqual([
        gap,
        required,
        margin,
        pose!.rock,
        pose!.heat,
        ...at,
      ]);
    });
  });

  test('what no runner has and what does not move are empty cells', () => {
    expect(rows('clearances.csv')[2]!.station).toBe('');
    const still = { gaps: { gaps: GAPS.map(({ pose: _, ...g }) => g), profiles: [] } };
    const [row] = readCsv(roomTables(DESIGN, still)[0]!.text);
    expect([row!.roll, row!.heat]).toEqual(['', '']);
  });
});

test('reach: an entry a row, with its tool and what is in the way', () => {
  expect(rows('reach.csv').map((r) => [r.id, r.where, r.reach, r.tool, r.by, r.message])).toEqual(
    ROOM.access.entries.map((e) => [e.id, e.where, e.reach, e.best!.name, e.by.join('; '), e.message]),
  );
  const [entry] = ROOM.access.entries;
  const bare = { access: { entries: [{ ...entry!, best: null, by: ['r1', 'r 2, old'] }], wrap: [] } };
  expect(readCsv(roomTables(DESIGN, bare)[1]!.text)[0]).toMatchObject({ tool: '', by: 'r1; r 2, old' });
});

test('wrap: stretches in the order of the tube', () => {
  expect(rows('wrap.csv').map((r) => [r.runner, Number(r.from), Number(r.to), r.state, r.why, r.of])).toEqual([
    ['r1', 0, 40, 'bare', 'sensor', 'egt 1'],
    ['r1', 40, 180, 'wrapped', '', ''],
    ['r1', 180, 260.5, 'bare', 'fastener', 'left flange stud 3'],
    ['r1', 260.5, 640, 'wrapped', '', ''],
    ['r1', 640, 700, 'bare', 'bundle', 'r3'],
    ['r3', 0, 100, 'bare', 'as-drawn', ''],
    ['r3', 100, 460, 'wrapped', '', ''],
    ['r3', 460, 500, 'bare', 'narrow', 'frame rail'],
  ]);
});

test('sensors: as the design has them, and as they were found', () => {
  const [lambda, egt] = rows('sensors.csv');
  expect(lambda).toMatchObject({
    id: 'lambda',
    kind: 'oxygen',
    on: 'left collector',
    beside: 'frame rail',
    spanner: 'fits',
  });
  expect([lambda!.at, lambda!.clock, lambda!.lean, lambda!.to_collector, lambda!.room].map(Number)).toEqual([
    90, 30, 31.25, 90, 18.2,
  ]);
  expect(egt).toMatchObject({ on: 'r1', room: '', beside: '', spanner: 'r3' });
  expect(egt!.remarks).toBe(ROOM.sensors[1]!.remarks[0]!.message);
});

test('removal: a row a piece, and where it stops', () => {
  expect(rows('removal.csv')[0]).toMatchObject({
    runners: 'r1; r3; r5; r7',
    collectors: 'left collector',
    slides: 'yes',
    leaves: 'yes',
    beside: 'frame rail',
    stopped_by: '',
    stopped_after: '',
  });
  const [piece] = ROOM.removal.pieces;
  const stuck = {
    ...piece!,
    leaves: false,
    room: null,
    stopped: { by: ['rail', 'block'], after: 61.5, at: [0, 0, 0] as const },
  };
  const text = roomTables(DESIGN, { removal: { pieces: [stuck], joints: [] } }).find(
    (t) => t.name === 'removal.csv',
  )!.text;
  expect(readCsv(text)[0]).toMatchObject({
    leaves: 'no',
    room: '',
    stopped_by: 'rail; block',
    stopped_after: '61.50000000',
  });
});
