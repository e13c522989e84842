import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { siteInForce } from '../../frontend/src/state/use-site';
import { aSite } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

describe('a page that is open while another site file comes into force', () => {
  it('reads the site anew, once, and calls all by its new names', async () => {
    const renamed = { ...aSite(), name: 'Renamed works' };
    opened = await openPage(new FakeServer(), '/signs', { '/api/site': renamed });
    const asked = (): number => opened?.asked.filter(({ path }) => path === '/api/site').length ?? 0;
    siteInForce('one');
    siteInForce('one');
    await flushPromises();
    expect(asked()).toBe(0);
    siteInForce('another');
    siteInForce('another');
    await flushPromises();
    expect(asked()).toBe(1);
    expect(opened.page.text()).toContain('Renamed works');
  });
});
