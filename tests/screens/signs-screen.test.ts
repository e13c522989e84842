import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

async function signs(): Promise<Page['page']> {
  opened = await openPage(new FakeServer(), '/signs');
  const { page } = opened;
  await vi.waitUntil(() => page.find('.signs-screen').exists());
  await flushPromises();
  return page;
}

describe('the screen of signs', () => {
  it('says first that nothing on it is of the plant', async () => {
    expect((await signs()).get('.signs-note').text()).toContain('none of them is of your plant');
  });

  it('shows each priority by shape, number and word, filled and taken on, and the alert beside them', async () => {
    const page = await signs();
    for (const priority of ['1, act now', '2, act soon', '3, look into it']) {
      const marks = page.findAll('[role=img]').filter((one) => one.attributes('aria-label') === `priority ${priority}`);
      expect(marks.length).toBe(2);
      expect(marks.filter((one) => one.find('.outlined').exists()).length).toBe(1);
    }
    expect(page.findAll('[aria-label="alert"]').length).toBe(1);
    const shapes = new Set(
      page.findAll('.signs-screen .priority-shape:not(.outlined) > path').map((one) => one.attributes('d')),
    );
    expect(shapes.size).toBe(3);
  });

  it('draws strips by the parts of the hall: calm, too near on either side, old, and not known', async () => {
    const page = await signs();
    expect(page.findAll('.pressure-window').length).toBe(5);
    expect(page.get('[data-testid="strip-sample-too-near-to-room-air-gap-right"]').attributes('data-too-small')).toBe(
      'true',
    );
    expect(page.get('[data-testid="strip-sample-too-near-to-boiling-gap-left"]').attributes('data-too-small')).toBe(
      'true',
    );
    expect(page.get('[data-testid="strip-sample-calm-gap-left"]').attributes('data-too-small')).toBe('false');
    expect(page.get('[data-testid="strip-sample-old"]').classes()).toContain('old');
    expect(page.find('[data-testid="strip-sample-not-known-bar"]').exists()).toBe(false);
  });

  it('shows every quality of a value with its word, and what is old as old', async () => {
    const text = (await signs()).text();
    for (const word of [
      'uncertain: not moving',
      'bad: outside',
      'bad: never received',
      'old, 5',
      'not watched long enough',
    ])
      expect(text).toContain(word);
  });

  it('does not age its samples with the page', async () => {
    const page = await signs();
    expect(page.findAll('.signs-screen .age').filter((one) => one.text() === '< 3\u00a0s').length).toBeGreaterThan(2);
  });

  it('is led to from the foot of every screen', async () => {
    const page = await signs();
    expect(page.get('.safety a').attributes('href')).toBe('/signs');
  });
});
