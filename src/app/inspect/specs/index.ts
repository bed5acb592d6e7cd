/** The fields of every kind of thing. */
import type { Thing } from '../../../../shared/design/edit';
import { designSections } from './design';
import { engineSections } from './engine';
import { fastenerSections, flangeSections } from './flange';
import { groupSections } from './group';
import { mergeSections } from './merge';
import { portSections } from './port';
import { runnerSections } from './runner';
import { sensorSections } from './sensor';
import { serviceSections } from './service';
import type { Section } from './spec';
import { surroundingSections } from './surrounding';
import { tubeSections } from './tube';

type Sections = readonly Section<never>[];

export const SECTIONS: Record<Thing['kind'], Sections> = {
  design: designSections as unknown as Sections,
  engine: engineSections as unknown as Sections,
  port: portSections as unknown as Sections,
  flange: flangeSections as unknown as Sections,
  fastener: fastenerSections as unknown as Sections,
  tube: tubeSections,
  tooling: tubeSections.filter((section) => section.as === 'tooling').map(({ as: _, ...section }) => section),
  merge: mergeSections as unknown as Sections,
  runner: runnerSections as unknown as Sections,
  group: groupSections as unknown as Sections,
  surrounding: surroundingSections as unknown as Sections,
  service: serviceSections as unknown as Sections,
  sensor: sensorSections as unknown as Sections,
};
