import { chromium } from 'playwright-core';
import { pathOf } from './requirements';

const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-dev-shm-usage',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

/** Chromium without a window. Needs 'chromium'. */
export async function launchBrowser() {
  const browser = await chromium.launch({ executablePath: pathOf('chromium'), args: quiet });
  return { browser, stop: () => browser.close() };
}
