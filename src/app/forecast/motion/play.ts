/** All that is loaded when waves are first played on the header. */
export { Beat } from './Beat';
export { MotionBar } from './MotionBar';
export { WaveCollector, WaveTube } from './WaveTube';
