/** Where the formulas come from, each named once, with how sure the wording is. Sources that go by common practice say so. */
import type { Source } from './types';

const HANDBOOK = 'A. G. Bell, Four-Stroke Performance Tuning, exhaust chapter';
const INTAKE_EXHAUST = 'P. H. Smith, Scientific Design of Exhaust and Intake Systems';

export const SOURCES = {
  handbookLength: { text: HANDBOOK, confidence: 'read-in-source' },
  handbookBore: { text: `${HANDBOOK} (page not known)`, confidence: 'from-memory' },
  pulseTime: {
    text: 'Time for a wave to go out and back at the speed of sound; 120° from pulse to return is common practice',
    confidence: 'recomputed',
  },
  quarterWave: {
    text: 'Pipe closed at one end, L = c / 4f; end correction of H. Levine and J. Schwinger, Physical Review 73 (1948) 383',
    confidence: 'recomputed',
  },
  matching: {
    text: 'M. Fukuda and H. Izumi, Memoirs of the Faculty of Engineering, Yamaguchi University 16 (1965) 71–76, abstract',
    confidence: 'read-in-source',
  },
  torqueSpeed: {
    text: 'Magazine article on header sizing: area = rpm × cylinder / 88,200',
    confidence: 'read-in-source',
  },
  gasSpeed: {
    text: 'R. S. Khurmi and J. K. Gupta, A Textbook of Machine Design, table 32.3: 90–100 m/s, exhaust, high speed',
    confidence: 'read-in-source',
  },
  portStep: {
    text: `${INTAKE_EXHAUST}, as a reader’s published notes quote it; the book itself was not read`,
    confidence: 'from-memory',
  },
  equalArea: { text: 'Continuity: the joined pipes’ areas added up', confidence: 'recomputed' },
  outletShare: { text: 'Common practice: 1.6 to 1.9 × the primary’s bore where four join', confidence: 'from-memory' },
  cone: {
    text: 'Cone between two circles; 15° is common practice, which does not say whether half or full',
    confidence: 'recomputed',
  },
} as const satisfies Record<string, Source>;
