import { beforeAll, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { openPage } from './open-page';
import { type SmallHall, startSmallHall } from './small-hall';

/** What a browser tells of a violation (W3C Content Security Policy Level 3, section 5.1). */
interface Violation {
  readonly effectiveDirective: string;
  readonly blockedURI: string;
  readonly sample: string;
  readonly sourceFile: string;
}

suiteNeeding(['chromium'], 'the content policy in a browser', () => {
  const keep = stopAfterAll();
  let hall: SmallHall;
  beforeAll(async () => {
    hall = keep(await startSmallHall());
    hall.change({ leak: 'wet' });
    await until(async () => (await hall.ebbline.alarms()).length > 0, { everyMs: 100, what: 'an alarm' });
  });

  const screens = [
    ...['/halls/north', '/units/m1', '/units/m1?value=vacuumMargin', '/alarms', '/energy?unit=m1'],
    ...['/trends?points=m1.supply.temperature', '/setup', '/setup/m1', '/account', '/sign-in', '/set-up#none'],
  ];

  async function page(scheme: 'light' | 'dark') {
    const opened = keep(await openPage(hall.ebbline.url, { colorScheme: scheme }));
    const cookie = await hall.ebbline.signIn.cookie();
    await opened.page.context().addCookies([{ ...cookie, url: hall.ebbline.url }]);
    const told: Violation[] = [];
    await opened.page.exposeFunction('tellViolation', (one: Violation) => told.push(one));
    await opened.page.addInitScript(() => {
      document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sample, sourceFile }) => {
        (window as unknown as { tellViolation(one: object): void }).tellViolation({
          effectiveDirective,
          blockedURI,
          sample,
          sourceFile,
        });
      });
    });
    return { page: opened.page, told };
  }

  test.for(['light', 'dark'] as const)('is kept by every screen in %s', async (scheme) => {
    const { page: shown, told } = await page(scheme);
    for (const path of screens) {
      await shown.goto(`${hall.ebbline.url}${path}`);
      await shown.locator('main').first().waitFor();
      await shown.locator('main *').nth(8).waitFor({ state: 'attached' });
      expect(await shown.evaluate(() => document.documentElement.dataset['theme'])).toBe(scheme);
    }
    expect(told).toEqual([]);
  });

  test('stops scripts and styles that are slipped in, of any kind, and tells', async () => {
    const { page: shown, told } = await page('light');
    await shown.goto(`${hall.ebbline.url}/halls/north`);
    await shown.locator('main').first().waitFor();
    await shown.evaluate(() => {
      const slipped = document.createElement('div');
      slipped.innerHTML = '<p style="color: red" onclick="window.slipped = true">x</p><style>p{}</style>';
      document.body.append(slipped);
      slipped.querySelector('p')?.click();
      const script = document.createElement('script');
      script.textContent = 'window.slipped = true';
      document.body.append(script);
      // A text that is run later: what is run at once here is the debugger's, and may do all.
      // eslint-disable-next-line @typescript-eslint/no-implied-eval
      setTimeout('window.slipped = true');
    });
    const directives = () => new Set(told.map(({ effectiveDirective }) => effectiveDirective));
    await until(() => directives().size >= 5, { what: 'the violations' });
    expect([...directives()].sort()).toEqual([
      'script-src',
      'script-src-attr',
      'script-src-elem',
      'style-src-attr',
      'style-src-elem',
    ]);
    expect(await shown.evaluate(() => 'slipped' in window)).toBe(false);
  });

  test('lets no page of another address show a screen in a frame', async () => {
    const { page: shown } = await page('light');
    await shown.goto('about:blank');
    await shown.setContent(`<iframe src="${hall.ebbline.url}/halls/north"></iframe>`);
    const framed = await shown.locator('iframe').contentFrame().locator('main').count();
    expect(framed).toBe(0);
  });
});
