/**
 * Holds back what the page asks of the worker behind a hand until the benchmark has looked at its meter: each answer's
 * solve and drawing are then over before the next begins, and what is measured belongs to one answer.
 */
import type { BrowserContext, Page } from 'playwright-core';

type Gated = Window & { held: (() => void)[] };

/** An answer, or an ask, that takes longer is lost, ms. */
const PATIENCE_MS = 3000;

/** To be called before the page loads. */
export async function addGate(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const { held } = Object.assign(window as unknown as Gated, { held: [] as (() => void)[] });
    const post = Worker.prototype.postMessage as (this: Worker, message: unknown) => void;
    Worker.prototype.postMessage = function (this: Worker, message: { do?: string }) {
      if (message.do === 'ask' || message.do === 'further') held.push(() => post.call(this, message));
      else post.call(this, message);
    };
  });
}

export type Answered = {
  /** What the worker's clock says, ms. */
  readonly clocked: number;
  /** Whether the page will ask again for a better one. */
  readonly more: boolean;
};

/** Lets the next ask through and waits until its answer is drawn; null where nothing is asked. */
export async function letThrough(page: Page): Promise<Answered | null> {
  // Without functions of its own: what a loader adds to name them does not reach the page.
  return page.evaluate(async (patience) => {
    const { held } = window as unknown as Gated;
    const seen = performance.getEntriesByName('hand answer').length;
    const latest = performance.now() + patience;
    while (held.length === 0) {
      if (performance.now() > latest) return null;
      await new Promise((go) => requestAnimationFrame(go));
    }
    held.shift()!();
    while (performance.getEntriesByName('hand answer').length === seen) {
      if (performance.now() > latest) return null;
      await new Promise((go) => requestAnimationFrame(go));
    }
    // The frame that draws it, and the one that shows it has been drawn.
    for (let frame = 0; frame < 2; frame++) await new Promise((go) => requestAnimationFrame(go));
    const answer = performance.getEntriesByName('hand answer')[seen] as PerformanceMeasure;
    return { clocked: answer.duration, more: answer.detail.more };
  }, PATIENCE_MS);
}
