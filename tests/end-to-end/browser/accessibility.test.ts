import { beforeAll, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { axeViolations } from './axe-violations';
import { openPage } from './open-page';
import { type SmallHall, startSmallHall } from './small-hall';

suiteNeeding(['chromium'], 'the screens, with an alarm standing', () => {
  const keep = stopAfterAll();
  let hall: SmallHall;
  beforeAll(async () => {
    hall = keep(await startSmallHall());
    hall.change({ leak: 'wet' });
    await until(async () => (await hall.ebbline.alarms()).some(({ entry }) => entry === 'WATER-1'), {
      everyMs: 100,
      what: 'WATER-1',
    });
  });

  const screens = [
    ['Hall', '/halls/north', 'strip-m1-bar'],
    ['Loop', '/units/m1', 'point-supply.temperature'],
    ['A value that is opened', '/units/m1?value=vacuumMargin', 'value-uncertainty'],
    ['Energy', '/energy?unit=m1', 'together-heatRemoved'],
    ['Alarms', '/alarms', 'alarm-m1:WATER-1'],
    ['Alarms set aside', '/alarms/set-aside', 'set-aside-count'],
    ['Journal of alarms', '/alarms/journal', 'journal-rows'],
    ['Limits', '/limits', 'limit-MARGIN-1'],
    ['One entry of the alarm list', '/limits/MARGIN-1?unit=m1&propose=limit:4000', 'set-site'],
    ['Alarm performance', '/performance?days=1', 'too-short'],
    ['Guided tests', '/guided-tests', 'guided-survey'],
    ['A guided test that is offered', '/units/m1/guided-tests/zeroCheck', 'guided-offer'],
    ['Setup, as an admin sees it', '/setup', 'tokens'],
    ['Your sign-in', '/account', 'account'],
    ['Signing in', '/sign-in', 'sign-in'],
  ] as const;
  const cases = screens.flatMap(([name, path, shown]) =>
    (['light', 'dark'] as const).map((scheme) => ({ name, path, shown, scheme })),
  );

  test.for(cases)('$name in $scheme has no violation that axe-core finds', async ({ path, shown, scheme }) => {
    const { page, troubles } = keep(await openPage(hall.ebbline.url, { colorScheme: scheme }));
    await page.goto(`${hall.ebbline.url}${path}`);
    await page.getByTestId(shown).first().waitFor();
    expect(await page.evaluate(() => document.documentElement.dataset['theme'])).toBe(scheme);
    expect(await axeViolations(page)).toEqual([]);
    if (path === '/alarms') {
      await page.getByRole('button', { name: 'Acknowledge…' }).first().click();
      expect(await axeViolations(page)).toEqual([]);
    }
    expect(troubles).toEqual([]);
  });

  test('a page with a fault is found out', async () => {
    const { page } = keep(await openPage(hall.ebbline.url));
    await page.getByTestId('strip-m1-bar').waitFor();
    await page.evaluate(() => document.querySelector('main')?.append(document.createElement('button')));
    expect((await axeViolations(page)).join()).toMatch(/button-name/);
  });
});
