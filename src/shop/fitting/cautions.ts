/** What hurts when a header is fitted, wrapped and lives hot: short, and behind local codes and licensed practice. */
import type { Design } from '../../../shared/design/types';
import type { Block } from '../sheet/flow';

export function cautionBlocks({ wrap, service = [], surroundings = [], tubes }: Design): Block[] {
  const has = (kind: string): boolean => surroundings.some((s) => s.kind?.startsWith(kind));
  const lines = [
    has('fuel') && 'fuel lines',
    has('brake') && 'brake lines',
    has('wiring') && 'wiring',
    has('hose') && 'hoses',
  ].filter((name) => typeof name === 'string');
  const nearby = lines.length > 0 ? lines.join(', ') : 'Fuel and brake lines, hoses and wiring';
  const mild = Object.values(tubes).some(({ material }) => material === undefined || material === 'mild-steel');
  const starter = service.some(({ kind }) => kind === 'starter') || surroundings.some(({ id }) => /starter/i.test(id));
  return [
    { kind: 'heading', words: 'Mind. Local codes and licensed practice come first' },
    ...[
      ['Under it', 'A jack lifts and does not hold: work on stands, on firm level ground.'],
      ['Battery', `Disconnect it before a spanner comes near ${starter ? 'the starter' : 'live terminals'}.`],
      [
        'Lines',
        `${nearby.charAt(0).toUpperCase()}${nearby.slice(1)}: keep the gaps given, shield what is near, and look for leaks before the first start and after it.`,
      ],
      ...(wrap
        ? [
            [
              'Wrap',
              'Its fibres get into skin, eyes and lungs: gloves, glasses, mask, and wet it where its maker says so. It smokes when first hot: outdoors, nobody breathing it.',
            ],
            ...(mild
              ? [['Rust', 'Mild steel corrodes sooner under wrap, which holds water: look under it each year.']]
              : []),
          ]
        : []),
      [
        'Hot',
        'A header, wrapped or not, burns long after the engine stops. Let it cool; retighten cold, after the first heat.',
      ],
    ].map(([head, words]) => ({ kind: 'words', head: head!, words: words! }) as const),
  ];
}
