import type { ProposedSettings, SettingScope } from '@ebbline/shared/contract/alarm-settings';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EntryId } from '../../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { checkChange } from '../../../../../../backend/src/evaluation/alarm-rules/settings/check-change';
import { layChanges } from '../../../../../../backend/src/evaluation/alarm-rules/settings/lay-changes';
import {
  layersOfChanges,
  type SettingRecord,
} from '../../../../../../backend/src/evaluation/alarm-rules/settings/setting-record';
import { toSettings } from '../../../../../../backend/src/evaluation/alarm-rules/settings/to-settings';
import type { CompiledSite } from '../../../../../../backend/src/evaluation/site/compiled-site';
import { compiledOrThrow, smallSite, smallSiteDocument } from '../../../../../helpers/small-site';

const everywhere: SettingScope = { kind: 'site' };
const north: SettingScope = { kind: 'hall', id: 'north' };
const m1: SettingScope = { kind: 'unit', id: 'm1' };
const m2: SettingScope = { kind: 'unit', id: 'm2' };

let made = 0;
const record = (entry: EntryId, scope: SettingScope, set: ProposedSettings): SettingRecord => ({
  id: `setting-${(made += 1)}`,
  atMs: made,
  entry,
  scope,
  set,
  old: toSettings(entry, undefined),
  new: toSettings(entry, undefined),
  reason: 'a reason',
  link: '',
  operator: 'Ines',
  station: 'desk',
});

type Limits = Readonly<Record<string, unknown>>;
interface Document {
  readonly limits?: Limits;
  readonly units: Readonly<Record<string, { readonly limits?: Limits }>>;
}

/** The small site with other limits of the site and of one unit. */
function siteWith(ofSite: Limits, ofUnit: Readonly<Record<string, Limits>> = {}): CompiledSite {
  const document = smallSiteDocument() as Document;
  const units = Object.fromEntries(
    Object.entries(document.units).map(([id, unit]) => [id, { ...unit, limits: { ...unit.limits, ...ofUnit[id] } }]),
  );
  return compiledOrThrow({ ...document, units, limits: { ...document.limits, ...ofSite } });
}

const codeOf = (site: CompiledSite, entry: EntryId, scope: SettingScope, set: ProposedSettings): string | null => {
  const checked = checkChange(site, layersOfChanges([]), { entry, scope, set });
  return checked.ok ? null : `${checked.fault.code} ${/unit (\w+)/.exec(checked.fault.message)?.[1] ?? ''}`.trim();
};

describe('a change of a setting', () => {
  // The band is 7 to 9 for all, and for m2 it ends at 8: what fits the site may cross it there.
  const banded = siteWith(
    { 'CHEM-2': { low: '7', limit: '9', deadband: '0.1' } },
    { m2: { 'CHEM-2': { limit: '8' } } },
  );

  it.each([
    ['a low end that is above the end of a unit', everywhere, { low: 8.5 }, 'SETTING_BAND m2'],
    ['the same for its hall', north, { low: 8.5 }, 'SETTING_BAND m2'],
    ['a deadband that takes all of the band of a unit', everywhere, { deadband: 0.7 }, 'SETTING_DEADBAND m2'],
    ['the same for the other unit alone', m1, { low: 8.5 }, null],
    ['what fits everywhere', everywhere, { low: 7.5, deadband: 0.2 }, null],
  ] as const)('is looked at at every unit that it reaches: %s', (_, scope, set, code) => {
    expect(codeOf(banded, 'CHEM-2', scope, set)).toBe(code);
  });

  it('is refused where a unit would have the second step of a pair tell first', () => {
    const stepped = siteWith({}, { m2: { 'MARGIN-2': { limit: '4 kPa' } } });
    expect(codeOf(stepped, 'MARGIN-1', everywhere, { limit: 3000 })).toBe('SETTING_STEPS m2');
    expect(codeOf(stepped, 'MARGIN-1', everywhere, { limit: 4500 })).toBeNull();
  });

  it('is not refused for what the site file alone makes nonsense of, and it leaves as it is', () => {
    const faulty = siteWith({ 'CHEM-2': { low: '7', limit: '9' } }, { m2: { 'CHEM-2': { limit: '6' } } });
    expect(codeOf(faulty, 'CHEM-2', everywhere, { onDelaySeconds: 30 })).toBeNull();
    expect(codeOf(faulty, 'CHEM-2', everywhere, { low: 7.5 })).toBe('SETTING_BAND m2');
  });
});

describe('changes over another site file', () => {
  const refused = (site: CompiledSite, records: readonly SettingRecord[]) =>
    layChanges(site, records).refused.map(({ record: { id }, fault }) => [id, fault.code]);
  const limitAt = (site: CompiledSite, unit: string, entry = 'MARGIN-1') =>
    site.units.find(({ id }) => id === unit)?.limits.get(entry);

  it('stay in force as far as they fit it', () => {
    const one = record('MARGIN-1', everywhere, { limit: 7000 });
    const laid = layChanges(siteWith({ 'MARGIN-1': { limit: '4 kPa' } }), [one]);
    expect([laid.accepted, laid.refused]).toEqual([[one], []]);
    expect(limitAt(laid.site, 'm2')?.limit).toBe(7000);
  });

  it('are not in force where the place, the band or the first step is another one now', () => {
    const ofUnit = record('MARGIN-1', { kind: 'unit', id: 'm9' }, { limit: 7000 });
    const low = record('CHEM-2', everywhere, { low: 8.5 });
    const step = record('MARGIN-1', m2, { limit: 3000 });
    const other = siteWith({ 'CHEM-2': { low: '7', limit: '8', deadband: '0.1' }, 'MARGIN-2': { limit: '4 kPa' } });
    const laid = layChanges(other, [ofUnit, low, step]);
    expect(refused(other, [ofUnit, low, step])).toEqual([
      [ofUnit.id, 'SETTING_SCOPE_UNKNOWN'],
      [low.id, 'SETTING_BAND'],
      [step.id, 'SETTING_STEPS'],
    ]);
    expect(laid.accepted).toEqual([]);
    expect(limitAt(laid.site, 'm2', 'CHEM-2')).toMatchObject({ low: 7, limit: 8 });
    // With the file of before all but the unit that never was fit.
    expect(refused(smallSite(), [low, step])).toEqual([]);
  });

  it('are settled by a later change that says the same of the same place, and by no other', () => {
    const other = siteWith({ 'MARGIN-2': { limit: '4 kPa' } });
    const step = record('MARGIN-1', m2, { limit: 3000 });
    const elsewhere = record('MARGIN-1', m1, { limit: 7000 });
    const delay = record('MARGIN-1', m2, { onDelaySeconds: 20 });
    expect(refused(other, [step, elsewhere, delay])).toEqual([[step.id, 'SETTING_STEPS']]);
    expect(refused(other, [step, elsewhere, delay, record('MARGIN-1', m2, { limit: 5500 })])).toEqual([]);
  });

  it('are judged one after the other: what is added never turns what was said before', () => {
    const site = siteWith(
      { 'CHEM-2': { low: '7', limit: '9', deadband: '0.1' } },
      { m2: { 'CHEM-2': { limit: '8' } } },
    );
    const change = fc
      .record({
        scope: fc.constantFrom(everywhere, north, m1, m2),
        set: fc.oneof(
          fc.record({ low: fc.integer({ min: 5, max: 10 }) }),
          fc.record({ limit: fc.integer({ min: 5, max: 10 }) }),
        ),
      })
      .map(({ scope, set }) => record('CHEM-2', scope, set));
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 8 }), (records) => {
        const all = layChanges(site, records);
        const before = layChanges(site, records.slice(0, -1));
        expect(all.accepted.filter((one) => one !== records.at(-1))).toEqual(before.accepted);
        // Whatever was asked for, no unit is ever left with a band that is none.
        for (const { limits } of all.site.units) {
          const { limit, low } = toSettings('CHEM-2', limits.get('CHEM-2'));
          expect(low ?? -1).toBeLessThan(limit ?? 15);
        }
      }),
    );
  });
});
