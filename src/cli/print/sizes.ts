/** Starting sizes for people: where to start and how far the formulas spread, then each formula with where it comes from. */
import type { Display } from '../../../shared/design/types';
import type { Estimate, StartingSize, StartingSizes } from '../../../shared/engine/sizing/startingSizes';
import { lengthParts } from '../../../shared/units';
import { columns } from './columns';

const CONFIDENCE = {
  'read-in-source': 'read in the source',
  recomputed: 'worked out here',
  'from-memory': 'from memory',
} as const;

/** @param subject what was sized, such as `4 cylinders of 82 × 85 mm` */
export function printSizes({ sizes, leftOut }: StartingSizes, subject: string, display: Display): string {
  const length = (mm: number) => lengthParts(mm, display, display === 'in' ? 2 : 1).number;
  const head = ['', `start ${display}`, 'least', 'greatest', ''];
  const rows = sizes.map((s) => [
    s.name,
    length(s.start),
    length(s.least.mm),
    length(s.greatest.mm),
    `${s.measured}; least by ${lower(s.least.name)}, greatest by ${lower(s.greatest.name)}`,
  ]);
  const table = columns([head, ...rows], ['left', 'right', 'right', 'right', 'left']);
  const parts = [
    `Starting sizes, ${subject}`,
    table,
    ...sizes.map((s) => formulas(s, length, display)),
    ...(leftOut.length > 0
      ? [
          `Left out\n${columns(
            leftOut.map((l) => [l.name, l.why]),
            ['left', 'left'],
          )}`,
        ]
      : []),
    'Places to start from, no more: formulas made for other engines spread this far. Measure your own.',
  ];
  return `${parts.join('\n\n')}\n`;
}

function formulas(size: StartingSize, length: (mm: number) => string, display: Display): string {
  const each = size.estimates.map((e) => formula(e, `${length(e.mm)} ${display}`, length, display));
  return [`${size.name}, ${size.measured}`, ...each].join('\n');
}

function formula(e: Estimate, result: string, length: (mm: number) => string, display: Display): string {
  const bound = e.bearing === 'size' ? '' : `${e.bearing} `;
  const uses = e.uses.map(({ name, value, unit, words, assumed }) => {
    const shown =
      words ?? (unit === 'mm' ? `${length(value)} ${display}` : `${value}${unit.startsWith('°') ? '' : ' '}${unit}`);
    return `${lower(name)} ${shown.trimEnd()}${assumed ? ' (assumed)' : ''}`;
  });
  const lines: [string, string][] = [
    ['formula', e.words],
    ['source', `${e.source.text} (${CONFIDENCE[e.source.confidence]})`],
    ['assumes', e.assumes.map(lower).join('; ')],
    ['from', uses.join(', ')],
  ];
  const shown = lines.filter(([, text]) => text !== '');
  return `  ${e.name}: ${bound}${result}\n${columns(shown, ['left', 'left'], '    ')}`;
}

const lower = (text: string): string => text[0]!.toLowerCase() + text.slice(1);
