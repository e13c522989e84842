import { describe, expect, it } from 'vitest';
import { pointTable } from '@ebbline/shared/contract/point-table';
import { catalogueEntries } from '../../../../../backend/src/connections/site-files/catalogue-entries';
import {
  catalogue,
  groupEntries,
  systemEntries,
  unitEntries,
} from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { entryIds } from '../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { gradeOf } from '../../../../../backend/src/evaluation/alarm-rules/priority';
import { entriesWithBand } from '../../../../../backend/src/evaluation/site/compile-limits';
import { plantSite } from '../pipeline/plant';

/** Words that no first action may hold, whatever the entry: they let the vacuum go before anyone has looked. */
const forbidden: readonly RegExp[] = [
  /\bvent(s|ed|ing)?\b/i,
  /(stop|switch off|shut down|shut off|trip|turn off|halt)[^.;:]*vacuum/i,
  /vacuum source off/i,
  /(let|admit|blow)[^.;:]*\bair\b (in|into)/i,
  /break[^.;:]*vacuum/i,
  /open[^.;:]*(bleed|to the room|to atmosphere)/i,
];

describe.each(entryIds)('%s as rationalized', (id) => {
  const entry = catalogue[id];

  it('has every field that a rationalized alarm has', () => {
    for (const text of [entry.title, entry.cause, entry.consequence, entry.confirm, entry.basis])
      expect(text.trim().length).toBeGreaterThan(10);
    expect(Number.isFinite(entry.timeToRespondS)).toBe(true);
    expect(['severe', 'major', 'minor']).toContain(entry.severity);
    expect(entry.defaults.deadband).toBeGreaterThanOrEqual(0);
    expect(entry.defaults.onDelayMs).toBeGreaterThanOrEqual(0);
    expect(entry.defaults.offDelayMs).toBeGreaterThanOrEqual(0);
    expect(['a', 'b', 'c'].every((shape) => shape in entry.action)).toBe(true);
  });

  it('has no first action that lets the vacuum go, in any plant shape', () => {
    for (const shape of ['a', 'b', 'c'] as const)
      for (const words of forbidden) expect(entry.action[shape]).not.toMatch(words);
  });

  it('can be changed in the site file, its limit in its own quantity', () => {
    expect(catalogueEntries.has(id)).toBe(true);
    const quantity = catalogueEntries.get(id) ?? null;
    if (quantity === null) return;
    const unit = pointTable.find((row) => row.quantity === quantity)?.unit;
    expect(unit).toBeDefined();
  });
});

describe('the word list of forbidden first actions', () => {
  it.each([
    'Vent the loop, then look.',
    'Stop the vacuum source and drain.',
    'Let the air in to push the water out.',
    'Break the vacuum first.',
    'Open the tank to the room.',
  ])('catches “%s”', (text) => expect(forbidden.some((words) => words.test(text))).toBe(true));
});

describe('what differs by plant shape', () => {
  it('is said for each shape where pumps, tanks or the vacuum source are part of the action', () => {
    for (const id of ['VSRC-1', 'PUMP-1', 'PUMP-2', 'FAC-1', 'FIL-1', 'XFER-1'] as const) {
      const { a, b, c } = catalogue[id].action;
      expect(new Set([a, b, c]).size, id).toBeGreaterThan(1);
    }
    expect(catalogue['PUMP-1'].action.c).toMatch(/circulation pump/);
    expect(catalogue['PUMP-1'].action.a).toMatch(/supply tank/);
  });

  it('never sends anyone to look for a leak where warm seal water takes the capacity', () => {
    for (const id of ['VSRC-1', 'VSRC-2'] as const)
      for (const shape of ['a', 'b', 'c'] as const) expect(catalogue[id].action[shape]).not.toMatch(/\bleak/i);
  });
});

describe('bands', () => {
  it('are where the site file lets a site set the lower end', () => {
    const banded = entryIds.filter((id) => catalogue[id].defaults.low !== undefined);
    expect(new Set(banded)).toEqual(entriesWithBand);
  });

  it('reach the unit from the site file in SI, and are refused for an entry without one', () => {
    const site = plantSite({ unit: { limits: { 'CHEM-1': { low: '50 µS/cm', limit: '200 µS/cm' } } } });
    const limits = site.units[0]?.limits.get('CHEM-1');
    expect(limits?.low).toBeCloseTo(0.005, 12);
    expect(limits?.limit).toBeCloseTo(0.02, 12);
    expect(() => plantSite({ unit: { limits: { 'DEW-1': { low: '1 K' } } } })).toThrow(/no band/);
  });
});

describe('priority 1', () => {
  const entries = [...unitEntries, ...groupEntries, catalogue['INS-1'], catalogue['COM-1'], ...systemEntries];
  const first = entries.filter((entry) => gradeOf(entry.severity, entry.timeToRespondS) === 1).map(({ id }) => id);

  /** Each has a minute or two: what follows is out of anybody’s hands by the time a calmer alarm would be read. */
  const why: Readonly<Record<string, string>> = {
    'AIR-4': 'all flow is lost within tens of seconds',
    'BOIL-2': 'the flow collapses',
    'FLOW-2': 'chips throttle within seconds to a minute',
    'FAC-1': 'the supply passes 40 °C in half a minute',
    'TSUP-2': 'chips throttle, then trip',
    'WATER-1': 'water reaches live equipment',
  };

  it('is only what leaves less than three minutes to a severe end, and each says why', () => {
    for (const id of first) expect(Object.keys(why), id).toContain(id);
  });

  it('is at most a tenth of the catalogue, and where it is more by one, it is these six', () => {
    expect(first.length).toBeLessThanOrEqual(Math.max(Math.ceil(entries.length / 10), 6));
  });

  it('is never typed: severity and time to respond alone make it', () => {
    for (const entry of entries) expect(Object.keys(entry)).not.toContain('priority');
  });
});
