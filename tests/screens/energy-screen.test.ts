import type { EnergyPeriod, EnergyReport, EnergyTotal } from '@ebbline/shared/contract/energy';
import { energyReportSchema } from '@ebbline/shared/contract/energy';
import { flushPromises } from '@vue/test-utils';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { anAlarmsFrame } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const kilowattHour = 3.6e6;
const aTotal = (kWh: number | null, share: number | null, more: Partial<EnergyTotal> = {}): EnergyTotal => ({
  energy: kWh === null ? null : kWh * kilowattHour,
  expandedUncertainty: kWh === null ? null : kWh * 0.02 * kilowattHour,
  measuredSeconds: 3600 * (share ?? 0),
  wantedSeconds: share === null ? 0 : 3600,
  share,
  ...more,
});
const none = aTotal(null, null);
const aPeriod = (hour: number, heat: EnergyTotal, more: Partial<EnergyPeriod> = {}): EnergyPeriod => ({
  start: new Date(Date.UTC(2026, 1, 28, 23 + hour)).toISOString(),
  end: new Date(Date.UTC(2026, 2, 1, hour)).toISOString(),
  heatRemoved: heat,
  facilityHeat: none,
  chipEnergy: aTotal(240, 1),
  unitEnergy: aTotal(4, 1, { expandedUncertainty: null }),
  heatPerUnitEnergy: 52,
  ...more,
});
const aReport = (periods: readonly EnergyPeriod[], more: Partial<EnergyReport> = {}): EnergyReport =>
  energyReportSchema.parse({
    hall: 'east',
    unit: null,
    units: ['e1', 'e7'],
    timeZone: 'Europe/Oslo',
    by: 'hour',
    from: '2026-02-28T23:00:00.000Z',
    to: '2026-03-01T23:00:00.000Z',
    periods,
    total: aPeriod(0, aTotal(400, 0.9)),
    ...more,
  });

async function show(address: string, report: unknown = aReport([aPeriod(0, aTotal(208, 1))])): Promise<Page> {
  const server = new FakeServer();
  opened = await openPage(server, address, { '/api/energy': report });
  server.connect();
  server.send(anAlarmsFrame([]));
  await flushPromises();
  return opened;
}
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();
const askedFor = (page: Page): Record<string, string> => {
  const last = page.asked.filter(({ path }) => path.startsWith('/api/energy')).at(-1)?.path ?? '';
  return Object.fromEntries(new URL(last, 'http://test').searchParams);
};

describe('the Energy screen', () => {
  it('says of every period how much energy, how sure, and how much of the period was measured', async () => {
    const gap = aTotal(149, 1 - (17 * 60) / 3600);
    const { page } = await show('/energy?hall=east', aReport([aPeriod(0, aTotal(208, 1)), aPeriod(1, gap)]));
    expect(plain(page.get('[data-testid="00:00–01:00-heatRemoved"]').text())).toContain('208 ± 4 kWh all measured');
    const hole = page.get('[data-testid="01:00–02:00-heatRemoved"]');
    expect(plain(hole.text())).toContain('149 ± 3 kWh 72 % measured');
    expect(hole.find('.energy-share.gap').exists()).toBe(true);
    expect(page.get('[data-testid=together-heatRemoved]').text()).toContain('90\u00a0% measured');
  });

  it('puts nothing where nothing was measured, and rounds no gap away', async () => {
    const periods = [aPeriod(0, aTotal(null, 0)), aPeriod(1, aTotal(208, 0.9999))];
    const { page } = await show('/energy?hall=east', aReport(periods));
    const empty = plain(page.get('[data-testid="00:00–01:00-heatRemoved"]').text());
    expect(empty).toContain('nothing measured');
    expect(empty).not.toMatch(/\d/);
    expect(plain(page.get('[data-testid="01:00–02:00-heatRemoved"]').text())).toContain('99.9 % measured');
    expect(page.find('.energy-measured').attributes('width')).toBe('0');
  });

  it('has one line for periods that follow each other without anything measured', async () => {
    const empty = { chipEnergy: aTotal(null, 0), unitEnergy: aTotal(null, 0), heatPerUnitEnergy: null };
    const hours = [0, 1, 2, 3].map((hour) => aPeriod(hour, aTotal(null, 0), empty));
    const periods = [...hours, aPeriod(4, aTotal(208, 1))];
    const { page } = await show('/energy?hall=east', aReport(periods));
    const [first, second] = page.findAll('.energy-table tbody tr').map((line) => plain(line.text()));
    expect(first).toMatch(/^00:00–04:00\s*heat removed nothing measured/);
    expect(second).toMatch(/^04:00–05:00/);
    page.unmount();
    const days = await show('/energy?hall=east&by=day', aReport(periods, { by: 'day' }));
    expect(plain(days.page.get('.energy-table tbody tr').text())).toMatch(/^2026-03-01 to 2026-03-01/);
  });

  it('has no column for what no unit measures, and no row for what has not begun', async () => {
    const later = aPeriod(2, none, { chipEnergy: none, unitEnergy: none, heatPerUnitEnergy: null });
    const { page } = await show('/energy?hall=east', aReport([aPeriod(0, aTotal(208, 1)), later]));
    expect(page.findAll('.energy-table thead th').map((head) => head.text())).not.toContain(
      'heat to facility water, kWh',
    );
    expect(page.findAll('.energy-table tbody tr')).toHaveLength(2);
  });

  it('asks from midnight to midnight of the site, of what its address names', async () => {
    const hall = await show('/energy?hall=east');
    expect(askedFor(hall)).toEqual({
      hall: 'east',
      by: 'hour',
      from: '2026-02-28T23:00:00.000Z',
      to: '2026-03-01T23:00:00.000Z',
    });
    hall.page.unmount();
    // The clocks go forward on the last Sunday of March 2026 (EU summer time): that month is an hour shorter.
    const unit = await show('/energy?unit=e7&by=day&at=2026-03');
    expect(askedFor(unit)).toEqual({
      unit: 'e7',
      by: 'day',
      from: '2026-02-28T23:00:00.000Z',
      to: '2026-03-31T22:00:00.000Z',
    });
  });

  it('goes to the day before and back to the one that runs', async () => {
    const { page, router } = await show('/energy?hall=east');
    const button = (name: string) => page.findAll('button').find((one) => one.text() === name);
    expect(button('Later')?.attributes('disabled')).toBeDefined();
    await button('Earlier')?.trigger('click');
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ hall: 'east', at: '2026-02-28' });
    await button('Later')?.trigger('click');
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ hall: 'east' });
  });

  it('changes what is added up by its choice', async () => {
    const { page, router } = await show('/energy?hall=east');
    await page.get('main select').setValue('unit:w1');
    await flushPromises();
    expect(router.currentRoute.value.query).toEqual({ unit: 'w1' });
  });

  it('says so where the server does not answer', async () => {
    const { page } = await show('/energy?hall=east', { not: 'a report' });
    expect(page.get('[role=alert]').text()).toContain('can’t be read');
    expect(page.find('.energy-table').exists()).toBe(false);
  });

  it('is reached from the Hall and from a loop', async () => {
    const { routes } = await import('../../frontend/src/router');
    expect(routes.find(({ name }) => name === 'energy')?.path).toBe('/energy');
  });
});
