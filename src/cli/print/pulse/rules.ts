/** The rules of thumb beside the best size of a study, for people. mm, rpm. */
import type { MapRule } from '../../../pulse/forecast/rules';
import type { AmongRules, RulesBeside } from '../../../pulse/forecast/rulesBeside';
import { columns } from '../columns';
import { bandText, rpmText } from './curve';

export function ruleLines({ arrangement, band, asked, why, best }: RulesBeside): string[] {
  if (why !== null) return [`Rules of thumb are not told: ${why}`];
  return [
    `Rules of thumb for primaries of ${arrangement} over ${bandText(band)}; each is a starting point, none a proof:`,
    columns(
      asked.map((rule) => [rule.name, wishes(rule)]),
      ['left', 'left'],
    ),
    ...(best
      ? [
          ...placed('length', 'shorter', 'longer', best.length, best.rpm),
          ...placed('bore', 'narrower', 'wider', best.bore, best.rpm),
        ]
      : []),
  ];
}

function wishes({ kind, bearing, from, to, along }: MapRule): string {
  const bound = bearing === 'size' ? '' : `${bearing} `;
  if (kind === 'length') return `${bound}${span(from, to, 0)} long`;
  const bores = along.flatMap(({ bore }) => bore ?? []);
  const bore = `${bound}${span(Math.min(...bores), Math.max(...bores), 1)} bore`;
  return kind === 'bore' ? bore : `${bore}, with ${span(from, to, 0)} long`;
}

const span = (from: number, to: number, digits: number): string => {
  const [least, most] = [from.toFixed(digits), to.toFixed(digits)];
  return least === most ? `${least} mm` : `${least} to ${most} mm`;
};

function placed(what: string, less: string, more: string, among: AmongRules | null, rpm: number): string[] {
  if (!among) return [];
  const { is, from, to, lies, alike, agrees } = among;
  const digits = what === 'bore' ? 1 : 0;
  const size = `  the best ${what} here, ${Number(is.toFixed(2))} mm,`;
  const differ = `${span(from, to, digits)} at ${rpmText(rpm)} rpm`;
  if (lies === 'within') return [`${size} lies within what the rules differ by among themselves, ${differ}`];
  const beyond = `${size} is ${lies === 'below' ? less : more} than any rule asks for, ${differ}`;
  return agrees
    ? [
        `${beyond}; but ${what}s from ${span(...alike, digits)} cannot be told apart from it, and what the rules ask for lies there`,
      ]
    : [`${beyond}: look at it twice`];
}
