import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { launchBrowser } from '../../helpers/browser';
import { signInAt } from '../../helpers/sign-in';

export interface OpenPage {
  readonly browser: Browser;
  readonly page: Page;
  /** What went wrong in the page: faults of its scripts, and refused loads. */
  readonly troubles: readonly string[];
  stop(): Promise<void>;
}

/** A browser with one page on the program's own address; signed in, unless it is the demo site. */
export async function openPage(
  url: string,
  options: Pick<BrowserContextOptions, 'colorScheme' | 'viewport' | 'hasTouch' | 'isMobile' | 'reducedMotion'> = {},
): Promise<OpenPage> {
  const { browser, stop } = await launchBrowser();
  const context = await browser.newContext({
    viewport: { width: 1440, height: 1000 },
    deviceScaleFactor: 1,
    ...options,
  });
  // A bound against hanging, never a measure.
  context.setDefaultTimeout(120_000);
  const entry = signInAt(url);
  // The demo site is looked at by anyone at this machine.
  if (!(await entry.isDemo())) await context.addCookies([{ ...(await entry.cookie()), url }]);
  const page = await context.newPage();
  const troubles: string[] = [];
  page.on('pageerror', (fault) => troubles.push(`script: ${fault.message}`));
  page.on('console', (line) => {
    if (line.type() === 'error' && !/ERR_CONNECTION|WebSocket connection/.test(line.text()))
      troubles.push(`${line.text()} ${line.location().url}`);
  });
  page.on('request', (request) => {
    if (!request.url().startsWith(url) && !/^(data|blob):/.test(request.url()))
      troubles.push(`asks elsewhere: ${request.url()}`);
  });
  await page.goto(url);
  return { browser, page, troubles, stop };
}
