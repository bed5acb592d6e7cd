/** Makes the cutting plan it is sent. */
import { type BarProblem, cutBars } from '../../../src/shop/nest/bars';

self.onmessage = async ({ data }: MessageEvent<BarProblem>) => self.postMessage(await cutBars(data));
