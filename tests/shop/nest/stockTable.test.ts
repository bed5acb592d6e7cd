/** `stock.csv`, whole: what is bought, what is cut from it in which order, what is left. */
import { expect, test } from 'vitest';
import { stockPlan } from '../../../src/shop/nest/stockPlan';
import { stockTable } from '../../../src/shop/stockTable';

const TUBE = { outsideDiameter: 42.4, wall: 1.5 };

test('buy rows, cut rows, what is left', async () => {
  const plan = await stockPlan(
    { kerf: 2, endTrim: 5, bars: [{ id: 'six', ...TUBE, length: 6000, price: 31.5 }] },
    [
      { piece: 'r1-2', tube: TUBE, length: 400 },
      { piece: 'r2-2', tube: TUBE, length: 650.25 },
    ],
    [{ piece: 'r1-1', tube: TUBE, radius: 60, angle: 75, legs: [0, 30] }],
  );
  const lines = stockTable(plan).split('\r\n').slice(0, -1);
  expect(lines[0]).toBe(
    'row,kind,stock,number,source,what,count,each,cost,piece,from,to,unit,first_leg,second_leg,reversed,left',
  );
  expect(
    lines.slice(1).map((line) => line.replaceAll(/(\.\d*?)0+(?=,|$)/g, '$1').replaceAll(/\.(?=,|$)/g, '')),
  ).toEqual([
    'buy,bar,six,,bought,"bar 6000 mm, 42.4 × 1.5 mm mild steel",1,31.5,31.5,,,,,,,,',
    'buy,bend,u-bend-42.4x1.5-r60,,assumed,"bend 180°, radius 60 mm, legs 100 and 100 mm, 42.4 × 1.5 mm mild steel",1,,,,,,,,,,',
    'cut,bar,six,1,bought,straight tube 42.4 × 1.5 mm mild steel,,,,r2-2,5,655.25,mm,,,,',
    'cut,bar,six,1,bought,straight tube 42.4 × 1.5 mm mild steel,,,,r1-2,657.25,1057.25,mm,,,,',
    'left,bar,six,1,bought,straight tube 42.4 × 1.5 mm mild steel,,,,,,,mm,,,,4940.75',
    'cut,bend,u-bend-42.4x1.5-r60,1,bought,"bends of 60 mm radius, 42.4 × 1.5 mm mild steel",,,,r1-1,0,75,deg,30,0,yes,',
    `left,bend,u-bend-42.4x1.5-r60,1,bought,"bends of 60 mm radius, 42.4 × 1.5 mm mild steel",,,,,,,deg,,,,${Number(
      (105 - (2 / 60) * (180 / Math.PI)).toFixed(8),
    )}`,
  ]);
});

test('a plan of nothing is a header', async () => {
  expect(stockTable(await stockPlan(undefined, [], [])).split('\r\n')).toHaveLength(2);
});
