import type { Site } from '@ebbline/shared/contract/http-api';
import type { HallFrame } from '@ebbline/shared/contract/live-feed';
import type { QualityReason } from '@ebbline/shared/contract/reading';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { aFigure, aHallFrame, aLine, aPermit, aSite } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import { openPage } from './fixtures/mount-page';

let page: VueWrapper | null = null;
afterEach(() => {
  page?.unmount();
  vi.unstubAllGlobals();
});

async function show(frame: HallFrame, site: Site = aSite()): Promise<VueWrapper> {
  const server = new FakeServer();
  ({ page } = await openPage(server, '/halls/east', {}, site));
  server.connect();
  server.send(frame);
  await flushPromises();
  return page;
}
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ');

describe('the reserve on the Hall screen', () => {
  it('stands at each loop in free air and open hoses, and the smallest of the hall over them', async () => {
    const lines = [aLine('e1'), aLine('e7', { vacuumReserve: aFigure(0.002) })];
    const shown = await show(aHallFrame(lines));
    const reserve = plain(shown.get('[data-testid=loop-e1] .reserve-text').text());
    expect(reserve).toMatch(/reserve 282 L\/min free air.*< 3 s/);
    expect(reserve).toContain('carries 1.7 open hoses, all sources 3.5');
    const head = plain(shown.get('.figures').text());
    expect(head).toContain('smallest vacuum reserve');
    expect(head).toMatch(/120\.0 L\/min free air.* at E7/);
  });

  it('has no place where no unit can know it, and keeps the one at the head without a number where it is missing now', async () => {
    const of = (...reasons: readonly QualityReason[]) =>
      show(
        aHallFrame([
          aLine('e1', { vacuumReserve: aFigure(null, { age: null, quality: 'bad', reasons: [...reasons] }) }),
        ]),
      );
    const never = await of('notApplicable');
    expect(never.find('.reserve-text').exists()).toBe(false);
    expect(never.get('.figures').text()).not.toContain('reserve');
    never.unmount();
    const missing = await of('notReceived');
    expect(missing.find('.reserve-text').exists()).toBe(false);
    expect(plain(missing.get('.figures').text())).toMatch(
      /smallest vacuum reserve no value, what stands behind smallest vacuum reserve ?bad: never received/,
    );
  });
});

describe('permits on the Hall screen', () => {
  it('are named with unit and branch, overdue first', async () => {
    const permits = [
      aPermit('p1'),
      aPermit('p2', { state: 'overdue', until: '2026-03-01T11:00:00.000Z', branch: null }),
    ];
    const shown = await show(aHallFrame([aLine('e7', { openPermits: 2 })], { permits }));
    const listed = shown.findAll('.hall-permits .permit').map((one) => plain(one.text()));
    expect(listed[0]).toContain('E7, the whole loop · overdue');
    expect(listed[1]).toContain('E7, Rack 1 · open');
    expect(shown.get('[data-testid=loop-e7]').text()).toContain('2 permits are open');
  });

  it('leave no empty place', async () => {
    expect((await show(aHallFrame([aLine('e7')]))).find('.hall-permits').exists()).toBe(false);
  });
});

describe('a loop that is vented under a permit', () => {
  it('says so in place of its margins', async () => {
    const shown = await show(aHallFrame([aLine('e7', { ventedNotProtected: true })]));
    expect(shown.get('[data-testid=vented-e7]').text()).toContain('vented, not protected');
    expect(shown.find('[data-testid=strip-e7]').exists()).toBe(false);
  });
});

describe('units on one loop', () => {
  it('stand together under the loop’s name, with how many are needed', async () => {
    const site = { ...aSite(), loops: [{ id: 'l', name: 'Loop L', units: ['e1', 'e7'], unitsNeeded: 1 }] };
    const shown = await show(aHallFrame([aLine('e1'), aLine('e5'), aLine('e7')]), site);
    expect(shown.findAll('.loop-rows > li').map((row) => row.attributes('data-testid') ?? plain(row.text()))).toEqual([
      'Loop L: 2 units on one loop, 1 needed',
      'loop-e1',
      'loop-e7',
      'loop-e5',
    ]);
  });
});
