/**
 * `npm run bench -- schemes`: the tables of src/pulse/scheme/NOTES.md anew. Schemes that were tried beside the one that stands, on
 * problems with exact solutions; none is timed. Not part of the plain `npm run bench`.
 */
import { byCharacteristics, type Edges, limited, traced } from './edges';
import { alike, byRoots, exact, type Flux, fastestOwn, hllc, rusanov } from './fluxes';
import { minmod, monotonizedCentral, none, superbee, vanAlbada, vanLeer } from './limiters';
import type { Scheme } from './march';
import { bySchemeOf, bySolver, entropyError, tubeShares, waveError } from './problems';
import { wildRuns } from './wild';

const stands = hllc(alike);
const scheme = (name: string, edges: Edges, flux: Flux = stands): Scheme => ({
  name,
  edges,
  flux,
  courant: 0.8,
  stages: 1,
});
const twice = (name: string, edges: Edges, courant: number): Scheme => ({
  ...scheme(name, edges),
  courant,
  stages: 2,
});

const SCHEMES: readonly Scheme[] = [
  scheme('first order', limited(none)),
  scheme('Hancock, minmod', limited(minmod)),
  scheme('Hancock, van Albada', limited(vanAlbada)),
  scheme('Hancock, van Leer', limited(vanLeer)),
  scheme('Hancock, monotonized central', limited(monotonizedCentral)),
  scheme('Hancock, superbee', limited(superbee)),
  scheme('monotonized central by characteristics', byCharacteristics(monotonizedCentral)),
  scheme('characteristics traced, third order', traced(monotonizedCentral)),
  scheme('m. c., exact Riemann solver', limited(monotonizedCentral), exact),
  scheme('m. c., Rusanov', limited(monotonizedCentral), rusanov),
  twice('two stages, van Leer, Courant 0.5', limited(vanLeer), 0.5),
  twice('two stages, m. c., Courant 0.5', limited(monotonizedCentral), 0.5),
  twice('two stages, m. c., Courant 0.8', limited(monotonizedCentral), 0.8),
];

const OUTER: readonly Scheme[] = [
  scheme('Einfeldt, by roots of density', limited(monotonizedCentral), hllc(byRoots)),
  scheme('both sides alike', limited(monotonizedCentral), stands),
  scheme('fastest of the sides’ own', limited(monotonizedCentral), hllc(fastestOwn)),
];

/** At 200 cells, and the order from 100. */
function errorAndOrder(errorWith: (cells: number) => number): string {
  const [coarse, fine] = [errorWith(100), errorWith(200)];
  return `${fine.toExponential(1)}  ${Math.log2(coarse / fine).toFixed(1)}`;
}

const row = (name: string, cells: readonly string[]): string => `  ${name.padEnd(40)}${cells.join('  ')}`;
const shares = (values: readonly number[]): string[] => values.map((value) => value.toFixed(2).padStart(6));

export function benchSchemes(say: (line: string) => void): void {
  say(
    'schemes    four shock tubes: mean error of density as a share of the bound, 200 cells; smooth wave, entropy wave: error, order',
  );
  say(row('', ['   Sod', '  rar.', ' blast', 'stream', '   smooth  ord.', ' entropy  ord.']));
  for (const one of SCHEMES) {
    const free = bySchemeOf(one);
    const smooth = errorAndOrder((cells) => waveError(free, cells));
    const entropy = errorAndOrder((cells) => entropyError(one, cells));
    say(row(one.name, [...shares(tubeShares(free)), `  ${smooth}`, ` ${entropy}`]));
  }
  const smooth = errorAndOrder((cells) => waveError(bySolver, cells));
  say(row('the solver itself, a rig', [...shares(tubeShares(bySolver)), `  ${smooth}`]));
  say('  outer speeds of HLLC, monotonized central, the same tubes');
  for (const one of OUTER) say(row(one.name, shares(tubeShares(bySchemeOf(one)))));
  const { rigs, steps, retries, failed } = wildRuns();
  say(`  the solver on ${rigs} wild rigs: ${retries} steps done again of ${steps}, ${failed} rigs failed`);
}
