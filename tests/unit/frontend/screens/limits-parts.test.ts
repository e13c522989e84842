import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { gradeOf } from '../../../../backend/src/evaluation/alarm-rules/priority';
import { drawnLimits } from '../../../../frontend/src/screens/limits/drawn-limits';
import { readListAddress, writeListAddress } from '../../../../frontend/src/screens/limits/limits-address';
import { matchEntries } from '../../../../frontend/src/screens/limits/match-entry';
import { gridColumnOf, priorityGrid } from '../../../../frontend/src/screens/limits/priority-grid';
import { formOf, membersOf, wantedOf } from '../../../../frontend/src/screens/limits/setting-form';
import { scopeKey, scopeOfKey, settingAt } from '../../../../frontend/src/screens/limits/settings-at';
import { lastOf, trialWish } from '../../../../frontend/src/screens/limits/trial-form';
import { partsOf, pointOfPart, trialLane } from '../../../../frontend/src/screens/limits/trial-lane';
import { valuesOfTrial } from '../../../../frontend/src/screens/limits/trial-values';
import { aTrial, anEntry, marginSettings } from '../../../screens/fixtures/alarm-management';
import { aSite, noon } from '../../../screens/fixtures/builders';

describe('the grid of priorities that is shown', () => {
  it('is the one by which the server computes them', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('severe' as const, 'major' as const, 'minor' as const),
        fc.integer({ min: 1, max: 90_000 }),
        (severity, seconds) => {
          expect(priorityGrid[severity][gridColumnOf(seconds)]).toBe(gradeOf(severity, seconds));
        },
      ),
    );
  });
});

describe('the search', () => {
  const entries = [
    anEntry('MARGIN-1'),
    anEntry('AIR-1', { title: 'Air is coming in', cause: 'A hose has come open.', consequence: 'The chips overheat.' }),
  ];
  it.each([
    ['margin', ['MARGIN-1']],
    ['HOSE open', ['AIR-1']],
    ['discharge tanks', ['MARGIN-1', 'AIR-1']],
    ['hose margin', []],
    ['  ', ['MARGIN-1', 'AIR-1']],
  ])('for %j finds %j', (search, found) => {
    expect(matchEntries(entries, { search, differing: false }).map(({ entry }) => entry)).toEqual(found);
  });

  it('keeps to what runs otherwise than authorised where that is asked', () => {
    const other = { ...marginSettings, limit: 4000 };
    const differing = anEntry('TSUP-1', {
      settings: [{ scope: { kind: 'site' }, authorised: marginSettings, running: other, differs: ['limit'] }],
    });
    expect(matchEntries([...entries, differing], { search: '', differing: true })).toEqual([differing]);
  });

  it('stands in the address and is read from there', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), fc.boolean(), (search, differing) => {
        expect(readListAddress(writeListAddress({ search, differing }))).toEqual({ search, differing });
      }),
    );
  });
});

describe('what a filled form wants', () => {
  const of = { entry: 'MARGIN-1', unit_of_measure: 'Pa', limit: 5000 };
  const margin = anEntry('MARGIN-1');
  const form = formOf(of, marginSettings);

  it('is nothing while it says what runs', () => {
    expect(wantedOf(of, margin, marginSettings, form)).toEqual({});
  });

  it('is only what differs, in the unit of the contract', () => {
    expect(wantedOf(of, margin, marginSettings, { ...form, limit: 4.5, enabled: false })).toEqual({
      limit: 4500,
      enabled: false,
    });
  });

  it.each([{ limit: '' as const }, { deadband: -1 }, { onDelaySeconds: 31 * 86_400 }])('is nothing by %j', (typed) => {
    expect(wantedOf(of, margin, marginSettings, { ...form, ...typed })).toBeNull();
  });

  it('offers no deadband of an entry whose rule looks at none', () => {
    expect(membersOf(margin)).toContain('deadband');
    expect(membersOf({ ...margin, hasDeadband: false })).not.toContain('deadband');
    expect(membersOf({ ...margin, hasDeadband: false })).toContain('limit');
  });

  it('begins with a proposal laid over what runs', () => {
    const laid = formOf(of, marginSettings, { deadband: 1200 });
    expect(laid).toMatchObject({ limit: 5, deadband: 1.2 });
    expect(wantedOf(of, margin, marginSettings, laid)).toEqual({ deadband: 1200 });
  });
});

describe('the setting that holds at a place', () => {
  const at = (limit: number, scope: Parameters<typeof scopeKey>[0]) => {
    const settings = { ...marginSettings, limit };
    return { scope, authorised: settings, running: settings, differs: [] };
  };
  const one = anEntry('MARGIN-1', {
    settings: [at(1, { kind: 'site' }), at(2, { kind: 'hall', id: 'east' }), at(3, { kind: 'unit', id: 'e7' })],
  });
  it.each([
    ['site', 1],
    ['hall:east', 2],
    ['hall:west', 1],
    ['unit:e7', 3],
    ['unit:e1', 2],
    ['unit:w1', 1],
  ])('of %s is the nearest', (key, limit) => {
    expect(scopeKey(scopeOfKey(key))).toBe(key);
    expect(settingAt(one, scopeOfKey(key), aSite())?.running.limit).toBe(limit);
  });
});

describe('a trial', () => {
  it('is asked for only with units, a period and a value that differs', () => {
    const period = lastOf(86_400, noon);
    expect(trialWish('MARGIN-1', ['e7'], period, { limit: 4500 })).toEqual({
      entry: 'MARGIN-1',
      units: ['e7'],
      from: '2026-02-28T12:00:00.000Z',
      to: noon,
      proposed: { limit: 4500 },
    });
    expect(trialWish('MARGIN-1', [], period, { limit: 4500 })).toBeNull();
    expect(trialWish('MARGIN-1', ['e7'], null, { limit: 4500 })).toBeNull();
    expect(trialWish('MARGIN-1', ['e7'], period, {})).toBeNull();
    expect(trialWish('MARGIN-1', ['e7'], period, null)).toBeNull();
  });

  it('gives a change the values in which it differs from what runs', () => {
    expect(valuesOfTrial(aTrial())).toEqual({ limit: 4000 });
    expect(valuesOfTrial(aTrial({ proposed: null }))).toEqual({});
  });

  it('of a part names the point of that part', () => {
    const [unit] = aSite().units;
    expect(partsOf('branch.<id>.flowShare', unit).map(({ id }) => id)).toEqual(['1']);
    expect(partsOf('vacuumMargin', unit)).toEqual([]);
    expect(pointOfPart('branch.<id>.flowShare', '1')).toBe('branch.1.flowShare');
  });
});

describe('the picture of a trial', () => {
  const history = {
    unit: 'e7',
    point: 'vacuumMarginWorst',
    unit_of_measure: 'Pa',
    bucketMs: 60_000,
    resolution: 'minute' as const,
    start: [noon],
    min: [12_400],
    mean: [12_500],
    max: [12_600],
    count: [60],
  };

  it('reaches from the data to both limits, however far off they lie', () => {
    const lane = trialLane('vacuumMarginWorst', aSite().units[0], history, [
      { whose: 'live', value: 5000 },
      { whose: 'proposed', value: 16_000 },
    ]);
    const [low, high] = lane.scale.range ?? [NaN, NaN];
    expect(low).toBeLessThan(5);
    expect(high).toBeGreaterThan(16);
    expect(lane.limits).toEqual([
      { value: 5, name: 'limit as it runs' },
      { value: 16, name: 'limit as proposed' },
    ]);
  });

  it('leaves the axis to the data where no limit can be drawn', () => {
    expect(trialLane('vacuumMarginWorst', undefined, undefined, []).scale.range).toBeNull();
  });
});

describe('the limits that are drawn beside a point', () => {
  const proposed = { ...marginSettings, limit: 4000 };
  const line = (entry: string, point: string, limit: number) => ({
    entry,
    title: entry,
    point,
    side: 'above' as const,
    limit,
    unit_of_measure: 'Cel',
  });

  it('are both of them where the entry is set by the value itself', () => {
    expect(drawnLimits('MARGIN-1', 'vacuumMarginWorst', marginSettings, proposed, [])).toEqual([
      { whose: 'live', value: 5000 },
      { whose: 'proposed', value: 4000 },
    ]);
  });

  it('are one where only a delay differs', () => {
    const later = { ...marginSettings, onDelaySeconds: 60 };
    expect(drawnLimits('MARGIN-1', 'vacuumMarginWorst', marginSettings, later, [])).toEqual([
      { whose: 'both', value: 5000 },
    ]);
  });

  it('stand at the figure of the unit and the distance together', () => {
    // Set point 32 °C: 2 K above it is 34 °C, 3 K above it 35 °C.
    const [live, other] = [2, 3].map((limit) => ({ ...marginSettings, limit }));
    if (live === undefined || other === undefined) throw new Error('two settings');
    const lines = [line('TSUP-1', 'supply.temperature', 34)];
    expect(drawnLimits('TSUP-1', 'supply.temperature', live, other, lines).map(({ value }) => value)).toEqual([34, 35]);
    expect(drawnLimits('TSUP-1', 'supply.temperature', live, other, [])).toEqual([]);
  });

  it('stand at their share of the figure of the unit', () => {
    // Rated flow 0.01 m³/s: half of it is 0.005, 60 % of it 0.006.
    const [live, other] = [0.5, 0.6].map((limit) => ({ ...marginSettings, limit }));
    if (live === undefined || other === undefined) throw new Error('two settings');
    const drawn = drawnLimits('FLOW-2', 'loop.flow', live, other, [line('FLOW-2', 'loop.flow', 0.005)]);
    expect(drawn.map(({ value }) => Number(value.toFixed(9)))).toEqual([0.005, 0.006]);
  });
});
