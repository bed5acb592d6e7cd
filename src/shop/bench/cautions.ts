/**
 * The page of cautions: what hurts when a header is sawn, welded, fitted and run. Facts, with where each comes from beside it; the
 * sentences are ours. No substitute for local codes and licensed practice, and it says so first.
 */
import type { Design } from '../../../shared/design/types';
import { isPurged } from '../making/welded/purge';
import { type Block, flowSheets } from '../sheet/flow';
import type { Paper } from '../sheet/paper';
import type { Sheet } from '../sheet/sheet';

type Caution = readonly [head: string, words: string];

const FIRST: readonly Caution[] = [
  [
    'First',
    'Local codes, the makers’ instructions and licensed practice come before this packet: where they differ, they hold. If you have not welded tube before, have it welded, or be taught.',
  ],
];

const metal = (purged: boolean): readonly Caution[] => [
  [
    'Edges',
    'A sawn tube cuts like a knife, inside and outside. Deburr every end before it is handled and before it is welded.',
  ],
  [
    'Saw, grinder',
    'Clamp the work, keep both hands on the tool, guards on. Discs shatter: eyes and face covered, nobody in their plane. Sparks travel far: nothing that burns near, and look again an hour later. Discs that cut mild steel do not touch stainless.',
  ],
  [
    'Arc',
    'It burns eyes and skin in seconds, those of who looks on too: helmet, gloves, long sleeves, screens. Chlorinated solvents near an arc make poison gas: clean with something else, and let it dry.',
  ],
  // OSHA 29 CFR 1910.1026: 5 µg/m³ over eight hours, action from 2.5. OSHA 1910.252(c): mechanical ventilation in small, low or
  // confined rooms (under 284 m³ a welder, ceilings under 5 m).
  [
    'Stainless',
    'Its fume holds hexavalent chromium, which causes cancer; the limit in the air is five millionths of a gram in a cubic metre (OSHA), far less than can be seen. Draw the fume off where it rises, more so in a small or low room, and wear the respirator that the job calls for.',
  ],
  // AWS Safety and Health Fact Sheet on zinc fume: zinc oxide 5 mg/m³ over eight hours.
  [
    'Zinc, coatings',
    'Galvanised and other coatings give off fume when welded, zinc’s brings fever hours later. Take the coating off well back from the weld first, and draw off what is left.',
  ],
  // OSHA 29 CFR 1910.146: air is short of oxygen below 19.5 %; it should hold about 21 %.
  [
    purged ? 'Argon' : 'Shielding gas',
    'Argon is heavier than air, has no smell, and drowns without warning where it gathers: in pits, tanks, closed rooms. Below 19.5 % of oxygen air is not fit to breathe (OSHA). Weld where air moves, shut the bottle when you stop, chain it upright.',
  ],
  [
    'Hot metal',
    'Tube stays hot long after it has stopped glowing, and looks cold. Mark it, and quench nothing that holds water or grease.',
  ],
  [
    'Closed tubes',
    'Never weld on a tube that is shut at both ends or that has held fuel or solvent: what is inside expands or explodes. Leave a vent.',
  ],
];

const vehicle: readonly Caution[] = [
  // OSHA 29 CFR 1910.244: a load that a jack has raised is cribbed, blocked or otherwise secured at once.
  [
    'Under it',
    'A jack lifts and does not hold. On firm level ground, on stands, wheels chocked, before any part of you is under it.',
  ],
  [
    'Battery, fuel',
    'Disconnect the battery before spanners or a welder come near. No welding on the vehicle beside fuel lines, tanks or trim; an extinguisher at hand.',
  ],
  // NIOSH: recommended limit 35 ppm over ten hours, ceiling 200 ppm; OSHA: 50 ppm over eight hours.
  [
    'Exhaust gas',
    'Carbon monoxide kills within minutes, without smell or warning. Run the engine outdoors or with the exhaust led outside, never in a closed garage, and with a header that leaks not at all.',
  ],
  // ISO 13732-1 has thresholds of burns: bare metal burns skin on touch from about 70 °C; the figure is from memory.
  [
    'Burns',
    'A running header is far beyond what skin, fuel, brake fluid, wiring and plastic stand. Let it cool before it is touched; look at everything near it after the first runs.',
  ],
];

const law: readonly Caution[] = [
  // US Clean Air Act 203(a)(3), 42 U.S.C. 7522(a)(3); Regulation (EC) 715/2007, Article 11.
  [
    'Emission law',
    'On a vehicle for the road, taking off, moving or bypassing catalysts, sensors and other emission controls is ruled by law: in the United States by the Clean Air Act, 203(a)(3), in the European Union by Regulation 715/2007 and national law. So are noise and type approval. Ask before you fit it.',
  ],
  ['Insurance', 'A changed exhaust may have to be inspected and told to the insurer before the vehicle is driven.'],
];

export function cautionSheets({ tubes, merges }: Design, paper: Paper): Sheet[] {
  const materials = [...Object.values(tubes), ...merges].map(({ material }) => material);
  const section = (words: string, list: readonly Caution[]): Block[] => [
    { kind: 'heading', words },
    ...list.map(([head, say]): Block => ({ kind: 'words', head, words: say })),
  ];
  const blocks = [
    ...FIRST.map(([head, words]): Block => ({ kind: 'words', head, words })),
    ...section('Sawing and welding', metal(materials.some((m) => isPurged(m)))),
    ...section('At the vehicle', vehicle),
    ...section('On the road', law),
  ];
  return flowSheets('Cautions', blocks, paper);
}
