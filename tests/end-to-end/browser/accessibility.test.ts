import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { beforeAll, expect, test } from 'vitest';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { openPage } from './open-page';
import { type SmallHall, startSmallHall } from './small-hall';

interface Violation {
  readonly id: string;
  readonly help: string;
  readonly nodes: readonly { readonly target: readonly unknown[] }[];
}

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const found = await page.evaluate(
    async () =>
      (await (window as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } }).axe.run()).violations,
  );
  return found.flatMap(({ id, help, nodes }) => nodes.map(({ target }) => `${id}: ${help} (${target.join(' ')})`));
}

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
    ['Alarms', '/alarms', 'alarm-m1:WATER-1'],
  ] as const;
  const cases = screens.flatMap(([name, path, shown]) =>
    (['light', 'dark'] as const).map((scheme) => ({ name, path, shown, scheme })),
  );

  test.for(cases)('$name in $scheme has no violation that axe-core finds', async ({ path, shown, scheme }) => {
    const { page, troubles } = keep(await openPage(hall.ebbline.url, { colorScheme: scheme }));
    await page.goto(`${hall.ebbline.url}${path}`);
    await page.getByTestId(shown).first().waitFor();
    expect(await page.evaluate(() => document.documentElement.dataset['theme'])).toBe(scheme);
    expect(await violations(page)).toEqual([]);
    if (path === '/alarms') {
      await page.getByRole('button', { name: 'Acknowledge…' }).first().click();
      expect(await violations(page)).toEqual([]);
    }
    expect(troubles).toEqual([]);
  });

  test('a page with a fault is found out', async () => {
    const { page } = keep(await openPage(hall.ebbline.url));
    await page.getByTestId('strip-m1-bar').waitFor();
    await page.evaluate(() => document.querySelector('main')?.append(document.createElement('button')));
    expect((await violations(page)).join()).toMatch(/button-name/);
  });
});
