/** What stands under a bend table: the tube itself, what a transition or a step makes of its start, and whether it can be made. */
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { resolveHeader } from '../../../geometry';
import type { Design } from '../../../shared/design/types';
import { cannotBeMade, TubeNote } from '../../../src/app/panels/TubeNote';
import { ONE_BEND, oneRunner } from '../../shop/designs';

const PLAIN = oneRunner(ONE_BEND);
const led = (length: number): Design => ({
  ...PLAIN,
  ports: [{ ...PLAIN.ports[0]!, transition: { length }, lengthInHead: 84 }],
});
const STEPPED: Design = {
  ...PLAIN,
  flanges: [{ id: 'f1', ports: ['p1'], thickness: 10, seat: 'stepped', stepDepth: 4 }],
};

function said(design: Design): string {
  const header = resolveHeader(design);
  const html = renderToStaticMarkup(<TubeNote header={header} runner={header.runners[0]!} />);
  return html.replace(/<[^>]*>/g, '').replace(/&#x27;/g, "'");
}
const missing = (design: Design): boolean => {
  const header = resolveHeader(design);
  return cannotBeMade(header, header.runners[0]!);
};

// 840 mm, a quarter turn of 60 mm radius, 240 mm.
const LENGTH = 840 + 30 * Math.PI + 240;

describe('the tube', () => {
  it('is all of a plain runner, and nothing more is said', () => {
    expect(said(PLAIN)).toMatch(`Tube ${LENGTH.toFixed(2)} mm. Angles`);
  });

  it('is shorter behind a transition, which is named with what is in the head', () => {
    expect(said(led(20))).toMatch(
      `Tube ${(LENGTH - 20).toFixed(2)} mm, plus 20.00 mm transition, plus 84.00 mm in the head. ` +
        "The table counts from the flange's face; on the tube the first straight is 820.00 mm.",
    );
  });

  it("is longer in a flange's step", () => {
    expect(said(STEPPED)).toMatch(
      `Tube ${(LENGTH + 4).toFixed(2)} mm, of which 4.00 mm in the flange's step. ` +
        "The table counts from the flange's face; on the tube the first straight is 844.00 mm.",
    );
  });

  it('that cannot be made says so, and where why', () => {
    expect([missing(PLAIN), missing(led(840)), missing(led(841))]).toEqual([false, false, true]);
    expect(said(led(841))).toMatch(`Its tube cannot be made: see Parts.Centerline ${LENGTH.toFixed(2)} mm, plus 84.00`);
    expect(missing({ ...PLAIN, runners: [{ ...PLAIN.runners[0]!, points: undefined as never }] })).toBe(false);
  });
});
