/** Studies lie beside their designs in this browser. */
import { kept } from '../../shelf/browserShelf';
import type { Keeping } from './study';

export const keeping: Keeping = { read: kept.study, write: kept.setStudy };
