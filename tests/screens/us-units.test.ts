import { openPermitRequestSchema } from '@ebbline/shared/contract/permit';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { startUnits } from '../../frontend/src/state/use-units';
import { readIn } from '../helpers/read-in';
import { aHallFrame, aLine, aLoopFrame, aPermit } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => localStorage.clear());
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
  localStorage.clear();
  startUnits();
  readIn('metric');
});

async function open(path: string, answers: Record<string, unknown> = {}): Promise<Page & { server: FakeServer }> {
  startUnits();
  const server = new FakeServer();
  opened = await openPage(server, path, answers);
  server.connect();
  return { ...opened, server };
}
const choose = (page: Page['page'], system: 'metric' | 'us') =>
  page.get(`.safety input[value=${system}]`).setValue(true);

describe('the choice of units at the foot', () => {
  it('is metric at first, and turns every number, axis and legend of the screen at once', async () => {
    const { page, server } = await open('/halls');
    server.send(aHallFrame([aLine('e1')]));
    await flushPromises();
    expect(page.text()).toContain('kPa absolute');
    await choose(page, 'us');
    const text = page.get('main').text();
    expect(text).toContain('psia');
    expect(text).not.toMatch(/kPa|L\/min|°C/);
    await choose(page, 'metric');
    expect(page.get('main').text()).not.toMatch(/psi|°F/);
  });

  it('is kept in the browser, and leaves the address alone', async () => {
    const { page, router } = await open('/halls');
    const before = router.currentRoute.value.fullPath;
    await choose(page, 'us');
    expect(localStorage.getItem('ebbline.units')).toBe('us');
    expect(router.currentRoute.value.fullPath).toBe(before);
    page.unmount();
    const again = await open('/signs');
    await vi.waitUntil(() => again.page.find('.sign-units').exists());
    expect(again.page.get('.sign-units').text()).toContain('psia');
  });

  it('follows another page of the same browser', async () => {
    const { page } = await open('/signs');
    await vi.waitUntil(() => page.find('.sign-units').exists());
    dispatchEvent(new StorageEvent('storage', { key: 'ebbline.units', newValue: 'us' }));
    await flushPromises();
    expect(page.get('.sign-units').text()).toContain('psia');
  });

  it('has a number typed in the unit that its field names, and sends it in SI', async () => {
    const { page, server, asked } = await open('/units/e7', { '/api/permits': aPermit('p1') });
    server.send(aLoopFrame());
    await choose(page, 'us');
    const button = page.findAll('button').find((one) => one.text() === 'Open a permit…');
    await button?.trigger('click');
    const field = page.get('.permit-form [name=litresPerMinute]');
    expect(page.get(`label[for="${field.attributes('id') ?? ''}"]`).text()).toContain('ft³/h free air');
    await field.setValue(60);
    await page.get('.permit-form').trigger('submit');
    await flushPromises();
    const sent = openPermitRequestSchema.parse(asked.find(({ path }) => path === '/api/permits')?.body);
    // One cubic foot an hour is 7.865791E-06 m³/s (NIST SP 811, from memory).
    expect(sent.expectedInLeak / (60 * 7.865791e-6)).toBeCloseTo(1, 6);
  });

  it('turns what is typed already with the unit of its field, so that it means the same', async () => {
    const { page, server } = await open('/units/e7');
    server.send(aLoopFrame());
    await flushPromises();
    const button = page.findAll('button').find((one) => one.text() === 'Open a permit…');
    await button?.trigger('click');
    const field = page.get<HTMLInputElement>('.permit-form [name=litresPerMinute]');
    await field.setValue(10);
    await choose(page, 'us');
    // 10 L/min is 0.01 m³/min; a cubic foot is 2.831685E-02 m³ (SP 811): 21.19 ft³/h.
    expect(field.element.value).toBe('21.19');
    await choose(page, 'metric');
    expect(field.element.value).toBe('10');
  });
});
