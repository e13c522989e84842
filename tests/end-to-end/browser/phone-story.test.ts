import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { expect, test } from 'vitest';
import { adminName } from '../../helpers/sign-in';
import { suiteNeeding } from '../../helpers/requirements';
import { stopAfterAll } from '../../helpers/stop-after';
import { until } from '../../helpers/until';
import { openPage } from './open-page';
import { startSmallHall } from './small-hall';

suiteNeeding(['chromium'], 'an operator on call, with a phone in one hand', () => {
  const keep = stopAfterAll();

  test('finds the alarm from the hall, acknowledges it, shelves it with a reason and an end, and brings it back, with no scrolling sideways and nothing too small for a thumb', async () => {
    const hall = keep(await startSmallHall());
    hall.change({ leak: 'wet' });
    await until(async () => (await hall.ebbline.alarms()).some(({ entry }) => entry === 'WATER-1'), {
      everyMs: 100,
      what: 'WATER-1',
    });
    const phone = { viewport: { width: 360, height: 780 }, hasTouch: true, isMobile: true };
    const { page, troubles } = keep(await openPage(hall.ebbline.url, phone));
    const fits = async (): Promise<void> => {
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    };
    await page.goto(`${hall.ebbline.url}/halls/north`);
    await page.getByTestId('loop-m1').getByText('Water').first().waitFor();
    await fits();

    // The places stand at the lower edge, within reach of a thumb.
    const places = page.getByRole('navigation', { name: 'Screens', exact: true });
    const bar = await places.boundingBox();
    expect((bar?.y ?? 0) + (bar?.height ?? 0)).toBeCloseTo(780, 0);
    expect(bar?.height).toBeGreaterThanOrEqual(44);
    await places.getByRole('link', { name: /^Alarms/ }).tap();
    const card = page.getByTestId('alarm-m1:WATER-1');
    const acknowledge = card.getByRole('button', { name: 'Acknowledge…' });
    expect((await acknowledge.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    await acknowledge.tap();
    await card.getByLabel(/^Comment/).fill('on my way');
    await fits();
    await card.getByRole('button', { name: 'Acknowledge', exact: true }).tap();
    await card.getByTestId('acknowledged-by').getByText(adminName).waitFor();

    await card.getByRole('button', { name: 'Shelve…' }).tap();
    const form = card.getByRole('form', { name: /^Shelve/ });
    const send = form.getByRole('button', { name: 'Shelve', exact: true });
    expect(await send.isDisabled()).toBe(true);
    await form.getByLabel('Why').fill('tray is mopped, the cable is wet yet');
    await form.getByRole('button', { name: '1 h', exact: true }).tap();
    await form.getByText('ends by itself at').waitFor();
    await fits();
    await send.tap();

    // It counts no more among what stands, and is kept in sight where it is set aside.
    await page.getByRole('link', { name: /^Set aside/ }).tap();
    const aside = page.getByTestId('aside-m1:WATER-1');
    await aside.getByText('tray is mopped').waitFor();
    await aside.getByText('Its condition holds now.').waitFor();
    expect(await aside.locator('.aside-until').innerText()).toMatch(/\d\d:\d\d/);
    await places.locator('.standing-one').waitFor({ state: 'detached' });
    await fits();
    await aside.getByRole('button', { name: 'Unshelve…' }).tap();
    await aside.getByRole('button', { name: 'Unshelve', exact: true }).tap();
    await aside.waitFor({ state: 'detached' });
    await places.locator('.standing-one').waitFor();
    await fits();

    const { rows } = await hall.ebbline.get<{ rows: JournalRow[] }>('/api/alarms/journal');
    const acts = rows.filter(({ alarm, actor }) => alarm === 'm1:WATER-1' && actor === adminName);
    expect(acts.map(({ reason }) => reason).slice(0, 2)).toEqual(['on my way', 'tray is mopped, the cable is wet yet']);
    expect(acts.length).toBeGreaterThanOrEqual(3);
    expect(troubles).toEqual([]);
  });
});
