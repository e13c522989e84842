import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aLoopFrame, aReading } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
let narrow = true;
beforeEach(() => {
  narrow = true;
  vi.stubGlobal('matchMedia', (asked: string) => ({
    matches: narrow && asked.includes('max-width: 480px'),
    addEventListener: () => undefined,
    removeEventListener: () => undefined,
  }));
});
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const frame = aLoopFrame({
  points: [
    aReading('supplyTank.level', 0.5, 'm'),
    aReading('loop.flow', 0.0057, 'm3/s'),
    aReading('vacuumMargin', 6_000, 'Pa', { kind: 'derived' }),
  ],
});

async function show(address: string): Promise<Page> {
  const server = new FakeServer();
  opened = await openPage(server, address);
  server.connect();
  server.send(frame);
  await flushPromises();
  return opened;
}

describe('on a phone the Loop screen', () => {
  it('shows its parts behind their headings, and draws one when it is opened, which the address then says', async () => {
    const { page, router } = await show('/units/e7');
    expect(page.find('[data-testid="vessel-supplyTank"]').exists()).toBe(false);
    expect(page.find('.along-the-path').exists()).toBe(false);
    expect(page.get('.figures').text()).toContain('vacuum margin');
    expect(page.get('.loop-aside').text()).toContain('Nothing here needs a person');
    const tanks = page.get('[data-testid=open-tanks]');
    expect(tanks.attributes('aria-expanded')).toBe('false');
    await tanks.trigger('click');
    await flushPromises();
    expect(page.find('[data-testid="vessel-supplyTank"]').exists()).toBe(true);
    expect(page.get('[data-testid=open-tanks]').attributes('aria-expanded')).toBe('true');
    expect(router.currentRoute.value.query).toEqual({ open: 'tanks' });
  });

  it('opens by its address, and keeps what is open where a value is opened and closed again', async () => {
    const { page, router } = await show('/units/e7?open=tanks,points');
    expect(page.find('[data-testid="vessel-supplyTank"]').exists()).toBe(true);
    await page.get('[data-testid="point-vacuumMargin"] .opens').trigger('click');
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ open: 'tanks,points', value: 'vacuumMargin' });
    await page.get('[data-testid=open-points]').trigger('click');
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ open: 'tanks', value: 'vacuumMargin' });
  });

  it('keeps what was typed in a part that is closed again', async () => {
    const { page } = await show('/units/e7?open=tanks');
    const body = page.get('[data-testid="vessel-supplyTank"]').element;
    await page.get('[data-testid=open-tanks]').trigger('click');
    await flushPromises();
    expect(body.isConnected).toBe(true);
    expect(body.closest<HTMLElement>('.chapter-body')?.style.display).toBe('none');
  });

  it('has every part open where there is room', async () => {
    narrow = false;
    const { page } = await show('/units/e7');
    expect(page.find('[data-testid="vessel-supplyTank"]').exists()).toBe(true);
    expect(page.find('[data-testid=open-tanks]').exists()).toBe(false);
  });
});
