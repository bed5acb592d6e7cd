/** Finds a Chromium for the browser tests and the screenshots: CHROMIUM if set, else the usual names and places. */
import { existsSync } from 'node:fs';
import { which } from './machine.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'microsoft-edge'];
const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** @returns {string | null} the path of its program */
export function findChromium() {
  const set = process.env.CHROMIUM;
  if (set) return existsSync(set) ? set : null;
  return NAMES.map(which).find(Boolean) ?? PLACES.find((path) => existsSync(path)) ?? null;
}

export const CHROMIUM_REMEDY =
  'The browser tests need Chromium. Run: sudo apt-get install --no-install-recommends chromium   (or set CHROMIUM to the path of one)';
