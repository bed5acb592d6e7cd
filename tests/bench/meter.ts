/**
 * Processor time of a page's script and of its workers. On a shared machine a clock would count the waiting for other
 * threads, such as those that draw in software, as script. Workers are left out of the browser's own metrics: theirs comes
 * from the operating system's accounts of their threads.
 */
import { readdirSync, readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

/** As Chromium names the threads of dedicated workers. */
const WORKER = /^DedicatedWorker/;

/** Since it was last asked, ms; `workers` is null where the machine keeps no accounts of threads. */
export type Meter = () => Promise<{ readonly page: number; readonly workers: number | null }>;

export async function startMeter(page: Page): Promise<Meter> {
  const ofPage = await page.context().newCDPSession(page);
  const ofBrowser = await page.context().browser()!.newBrowserCDPSession();
  await ofPage.send('Performance.enable', { timeDomain: 'threadTicks' });
  const script = async () => {
    const { metrics } = await ofPage.send('Performance.getMetrics');
    return 1000 * metrics.find((m) => m.name === 'ScriptDuration')!.value;
  };
  const { processInfo } = await ofBrowser.send('SystemInfo.getProcessInfo');
  const renderers = processInfo.filter((p) => p.type === 'renderer').map((p) => p.id);
  const workers = () => {
    const threads = renderers.flatMap(workersOf);
    return threads.length > 0 ? threads.reduce((sum, thread) => sum + timeOf(thread), 0) : null;
  };
  let before = { workers: workers(), page: await script() };
  return async () => {
    const now = { workers: workers(), page: await script() };
    const spent = {
      page: now.page - before.page,
      workers: now.workers === null || before.workers === null ? null : now.workers - before.workers,
    };
    before = now;
    return spent;
  };
}

function workersOf(process: number): string[] {
  const folder = `/proc/${process}/task`;
  try {
    return readdirSync(folder)
      .map((id) => `${folder}/${id}`)
      .filter((thread) => WORKER.test(readFileSync(`${thread}/comm`, 'utf8')));
  } catch {
    return [];
  }
}

/** Its first number is the time that the thread was on a processor, ns. */
const timeOf = (thread: string): number => Number(readFileSync(`${thread}/schedstat`, 'utf8').split(' ')[0]) / 1e6;
