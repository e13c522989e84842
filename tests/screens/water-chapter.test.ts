import type { HandEntry } from '@ebbline/shared/contract/hand-entry';
import {
  handCorrectionRequestSchema,
  handEntryRequestSchema,
  handEntrySchema,
  handWithdrawalRequestSchema,
} from '@ebbline/shared/contract/hand-entry';
import type { WaterParameterState } from '@ebbline/shared/contract/water-quality';
import { waterQualitySchema } from '@ebbline/shared/contract/water-quality';
import type { VueWrapper } from '@vue/test-utils';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { aLoopFrame, aReading, noon } from './fixtures/builders';
import { FakeServer } from './fixtures/fake-feed';
import type { Page } from './fixtures/mount-page';
import { openPage } from './fixtures/mount-page';

let opened: Page | null = null;
beforeEach(() => localStorage.clear());
afterEach(() => {
  opened?.page.unmount();
  vi.unstubAllGlobals();
});

const anEntry = (more: Partial<HandEntry> = {}): HandEntry =>
  handEntrySchema.parse({
    id: 'h1',
    unit: 'e7',
    parameter: 'molybdate',
    point: 'water.molybdate.hand',
    value: 0.041,
    unit_of_measure: 'kg/m3',
    typed: { value: 41, unit: 'mg/L', as: 'Mo', sampleTemperature: null, method: 'strip' },
    takenAt: '2026-02-20T09:00:00.000Z',
    enteredAt: '2026-02-20T09:20:00.000Z',
    by: 'A. Example',
    station: 'console',
    note: '',
    corrects: null,
    correctedBy: null,
    ...more,
  });
const aParameter = (more: Partial<WaterParameterState> = {}): WaterParameterState => ({
  parameter: 'ph',
  title: 'pH',
  unit_of_measure: '1',
  shownAs: null,
  referenceTemperature: null,
  origin: 'sensor',
  value: 8.6,
  reading: aReading('water.ph', 8.6, '1'),
  band: { lowLow: null, low: 8, high: 9.5, highHigh: null, basis: 'as the site states it' },
  word: 'inBand',
  sensor: 'water.ph',
  lastCalibration: '2026-01-10',
  byHand: true,
  dueEverySeconds: null,
  dueAt: null,
  overdue: false,
  lastEntry: null,
  ...more,
});
const byHand = aParameter({
  parameter: 'molybdate',
  title: 'Molybdate, as Mo',
  unit_of_measure: 'kg/m3',
  shownAs: 'Mo',
  origin: 'hand',
  value: 0.041,
  reading: aReading('water.molybdate.hand', 0.041, 'kg/m3', { age: 788_400, reasons: ['stale'], quality: 'uncertain' }),
  band: { lowLow: null, low: 0.05, high: 0.1, highHigh: null, basis: 'from memory' },
  word: 'low',
  sensor: null,
  lastCalibration: null,
  dueEverySeconds: 604_800,
  dueAt: '2026-02-27T09:00:00.000Z',
  overdue: true,
  lastEntry: anEntry(),
});

async function show(parameters: readonly WaterParameterState[], answers: Record<string, unknown> = {}): Promise<Page> {
  const server = new FakeServer();
  const water = waterQualitySchema.parse({ unit: 'e7', time: noon, parameters });
  opened = await openPage(server, '/units/e7', { '/api/units/e7/water': water, ...answers });
  server.connect();
  server.send(aLoopFrame());
  await flushPromises();
  return opened;
}
const plain = (text: string): string => text.replaceAll('\u00a0', ' ').replace(/\s+/g, ' ').trim();
const button = (page: VueWrapper, name: string) => {
  const found = page.findAll('button').find((one) => one.text().startsWith(name));
  if (found === undefined) throw new Error(`no button named ${name}`);
  return found;
};

describe('the water of a loop', () => {
  it('stands against its band in a word, with where the value comes from', async () => {
    const { page } = await show([aParameter()]);
    const said = plain(page.get('[data-testid=water-ph]').text());
    for (const part of ['8.60 pH', 'in its band', '8.00 to 9.50 pH', 'as the site states it', 'calibrated 2026-01-10'])
      expect(said).toContain(part);
    expect(page.find('[data-testid=water-ph] .band-dot.outside').exists()).toBe(false);
  });

  it('says plainly that a sample by hand is overdue, since when, and who drew the last one', async () => {
    const { page } = await show([aParameter(), byHand]);
    const said = plain(page.get('[data-testid=water-molybdate]').text());
    for (const part of [
      'Molybdate, as Mo',
      '41 mg/L',
      'below its band',
      'overdue by hand since 2026-02-27 10:00',
      'A. Example',
    ])
      expect(said).toContain(part);
    expect(page.text()).toContain('1 sample by hand is overdue');
    expect(page.find('[data-testid=water-molybdate] .band-dot.outside').exists()).toBe(true);
  });

  it('says so of a parameter without a value', async () => {
    const { page } = await show([aParameter({ origin: 'none', value: null, reading: null, word: 'unknown' })]);
    expect(page.get('[data-testid=water-ph]').text()).toContain('no value');
  });
});

describe('a value entered by hand', () => {
  it('is sent with its unit, form, time and name, and said to be there once the server has confirmed it', async () => {
    const { page, asked } = await show([byHand], { '/api/units/e7/hand-entries': anEntry({ value: 0.062 }) });
    await button(page, 'Enter a value by hand').trigger('click');
    expect(page.get('.hand-form .caution').text()).toContain('licensed practice');
    await page.get('.hand-form [name=value]').setValue(62);
    await page.get('.hand-form [name=as]').setValue('Mo');
    await page.get('.hand-form [name=takenAt]').setValue('2026-03-01T12:30');
    await page.get('.hand-form [name=method]').setValue('laboratory');
    await page.get('.hand-form').trigger('submit');
    await flushPromises();
    const body = asked.find((one) => one.body !== undefined)?.body;
    expect(handEntryRequestSchema.parse(body)).toEqual({
      parameter: 'molybdate',
      value: 62,
      unit: 'mg/L',
      as: 'Mo',
      sampleTemperature: null,
      method: 'laboratory',
      takenAt: '2026-03-01T11:30:00.000Z',
      operator: 'A. Example',
      note: '',
    });
    expect(plain(page.text())).toContain('Molybdate, as Mo 62 mg/L, by A. Example: confirmed by the server.');
    expect(page.find('.hand-form').exists()).toBe(false);
  });

  it('is not offered without a value, a time or a name', async () => {
    const { page } = await show([byHand]);
    await button(page, 'Enter a value by hand').trigger('click');
    const send = (): string | undefined => page.get('.hand-form button[type=submit]').attributes('disabled');
    expect(send()).toBeDefined();
    await page.get('.hand-form [name=value]').setValue(62);
    expect(send()).toBeUndefined();
    await page.get('.hand-form [name=takenAt]').setValue('');
    expect(send()).toBeDefined();
  });

  it('that the server refused is not shown as entered', async () => {
    const { page } = await show([byHand], { '/api/units/e7/hand-entries': { not: 'an entry' } });
    await button(page, 'Enter a value by hand').trigger('click');
    await page.get('.hand-form [name=value]').setValue(62);
    await page.get('.hand-form').trigger('submit');
    await flushPromises();
    expect(page.get('.hand-form [role=alert]').text()).not.toBe('');
    expect(page.text()).not.toContain('confirmed by the server');
  });

  it('has the band of the site and what can be at all beside it, and says where it stands outside either', async () => {
    const { page } = await show([aParameter(), byHand]);
    await button(page, 'Enter a value by hand').trigger('click');
    const limits = (): string => plain(page.get('[data-testid=typed-limits]').text());
    const verdict = (): string => page.get('[data-testid=typed-verdict]').text();
    const type = async (value: number): Promise<boolean> => {
      await page.get('.hand-form [name=value]').setValue(value);
      return page.get('.hand-form button[type=submit]').attributes('disabled') === undefined;
    };
    expect(limits()).toBe('band of this site: 8.00 to 9.50 pH; can only be 0 to 14 pH');
    expect(await type(8.6)).toBe(true);
    expect(verdict()).toBe('');
    expect(await type(0.05)).toBe(true);
    expect(verdict()).toContain('Outside the band of this site');
    for (const impossible of [-0.1, 14.1]) {
      expect(await type(impossible)).toBe(false);
      expect(verdict()).toContain('No such value can be');
      expect(page.get('.hand-form [name=value]').attributes('aria-invalid')).toBe('true');
    }
    await page.get('.hand-form [name=parameter]').setValue('molybdate');
    expect(limits()).toContain('band of this site: 50 to 100 mg/L');
    expect(await type(40)).toBe(true);
    expect(verdict()).toContain('Outside the band');
    // 40 mg/L as Mo is 66.7 mg/L as MoO₄ (molar masses 95.95 and 159.95): another number, which the band is not of.
    await page.get('.hand-form [name=as]').setValue('MoO4');
    expect(verdict()).toBe('');
    expect(await type(-1)).toBe(false);
  });

  it('of pH is read in hundredths, and says its unit once', async () => {
    const acid = anEntry({ parameter: 'ph', point: 'water.ph.hand', value: 0.05, unit_of_measure: '1', typed: null });
    const { page } = await show([aParameter()], {
      '/api/units/e7/hand-entries': { unit: 'e7', time: noon, entries: [acid] },
    });
    await button(page, 'What was entered by hand').trigger('click');
    await flushPromises();
    expect(plain(page.get('.hand-entries').text())).toContain('pH 0.05, drawn');
  });

  it('is withdrawn with a reason and a name, and said to be so once the server has confirmed it', async () => {
    const withdrawal = anEntry({
      id: 'h2',
      value: null,
      typed: null,
      corrects: 'h1',
      by: 'B. Other',
      note: 'of unit E8',
    });
    let withdrawn = false;
    const { page, asked } = await show([byHand], {
      '/api/units/e7/hand-entries': () => ({
        unit: 'e7',
        time: noon,
        entries: withdrawn ? [withdrawal, anEntry({ correctedBy: 'h2' })] : [anEntry()],
      }),
      '/api/units/e7/hand-entries/h1/withdraw': () => {
        withdrawn = true;
        return withdrawal;
      },
    });
    await button(page, 'What was entered by hand').trigger('click');
    await flushPromises();
    await button(page, 'Withdraw…').trigger('click');
    expect(plain(page.get('.hand-form').text())).toContain('Molybdate, as Mo 41 mg/L will no longer count');
    const send = (): string | undefined => page.get('.hand-form button[type=submit]').attributes('disabled');
    expect(send()).toBeDefined();
    await page.get('.hand-form [name=note]').setValue('of unit E8');
    expect(send()).toBeUndefined();
    expect(page.text()).not.toContain('confirmed by the server');
    await page.get('.hand-form').trigger('submit');
    await flushPromises();
    const body = asked.find(({ path }) => path.endsWith('/h1/withdraw'))?.body;
    expect(handWithdrawalRequestSchema.parse(body)).toEqual({ operator: 'A. Example', note: 'of unit E8' });
    expect(plain(page.text())).toContain('Molybdate, as Mo withdrawn, by B. Other: confirmed by the server.');
    const listed = plain(page.get('.hand-entries').text());
    expect(listed).toContain('Molybdate, as Mo 41 mg/L, drawn 2026-02-20 10:00:00 · withdrawn since');
    expect(listed).toContain('“of unit E8”');
    expect(page.find('.hand-entries button').exists()).toBe(false);
  });

  it('stays in force where the server refuses its withdrawal', async () => {
    const { page } = await show([byHand], {
      '/api/units/e7/hand-entries': { unit: 'e7', time: noon, entries: [anEntry()] },
    });
    await button(page, 'What was entered by hand').trigger('click');
    await flushPromises();
    await button(page, 'Withdraw…').trigger('click');
    await page.get('.hand-form [name=note]').setValue('of unit E8');
    await page.get('.hand-form').trigger('submit');
    await flushPromises();
    expect(page.get('.hand-form [role=alert]').text()).not.toBe('');
    expect(page.text()).not.toContain('confirmed by the server');
    expect(button(page, 'Correct…').exists()).toBe(true);
  });

  it('is corrected by another entry, with a reason', async () => {
    const entries = { unit: 'e7', time: noon, entries: [anEntry()] };
    const { page, asked } = await show([byHand], {
      '/api/units/e7/hand-entries': entries,
      '/api/units/e7/hand-entries/h1/correct': anEntry({ id: 'h2', value: 0.067, corrects: 'h1' }),
    });
    await button(page, 'What was entered by hand').trigger('click');
    await flushPromises();
    expect(plain(page.get('.hand-entries').text())).toContain('41 mg/L, drawn 2026-02-20 10:00:00');
    expect(plain(page.get('.hand-entries').text())).toContain('test strip, by A. Example');
    await button(page, 'Correct…').trigger('click');
    await page.get('.hand-form [name=value]').setValue(67);
    expect(page.get('.hand-form button[type=submit]').attributes('disabled')).toBeDefined();
    await page.get('.hand-form [name=note]').setValue('read as MoO4');
    await page.get('.hand-form').trigger('submit');
    await flushPromises();
    const body = asked.find(({ path }) => path.endsWith('/h1/correct'))?.body;
    expect(handCorrectionRequestSchema.parse(body)).toMatchObject({ value: 67, note: 'read as MoO4' });
  });
});
