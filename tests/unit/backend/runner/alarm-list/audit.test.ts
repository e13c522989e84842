import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';
import { describe, expect, it } from 'vitest';
import type { EntryId } from '../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import type { SettingRecord } from '../../../../../backend/src/evaluation/alarm-rules/settings/setting-record';
import { toSettings } from '../../../../../backend/src/evaluation/alarm-rules/settings/to-settings';
import { findingsOf } from '../../../../../backend/src/runner/alarm-list/audit';
import { listedSettings } from '../../../../../backend/src/runner/alarm-list/listed-settings';
import { placesOf } from '../../../../../backend/src/runner/alarm-list/places';
import { SettingsInForce } from '../../../../../backend/src/runner/alarm-list/settings-in-force';
import { toListedAlarm } from '../../../../../backend/src/runner/alarm-list/to-listed-alarm';
import { smallSite } from '../../../../helpers/small-site';

const site: SettingScope = { kind: 'site' };
const north: SettingScope = { kind: 'hall', id: 'north' };
const m1: SettingScope = { kind: 'unit', id: 'm1' };

const record = (id: string, scope: SettingScope, limit: number, entry: EntryId = 'MARGIN-1'): SettingRecord => ({
  id,
  atMs: 0,
  entry,
  scope,
  set: { limit },
  old: toSettings(entry, undefined),
  new: { ...toSettings(entry, undefined), limit },
  reason: 'a reason',
  link: '',
  operator: 'Ines',
  station: 'desk',
});

/** Where each finding lies, what was authorised and what runs, and the change behind it. */
function audited(records: readonly SettingRecord[], id: EntryId = 'MARGIN-1'): unknown[] {
  const settings = new SettingsInForce(smallSite(), records);
  const entry = toListedAlarm(id, listedSettings(id, placesOf(settings, null)), null);
  return findingsOf([entry], records, settings.site()).map(({ scope, member, authorised, running, change }) => [
    scope.kind === 'site' ? 'site' : scope.id,
    member,
    authorised,
    running,
    change?.id,
  ]);
}

describe('the places of a site', () => {
  it('are the site, its halls and its units, each with what it lies in', () => {
    const places = placesOf(new SettingsInForce(smallSite(), []), null);
    expect(places.map(({ scope, parent }) => [scope.kind === 'site' ? 'site' : scope.id, parent])).toEqual([
      ['site', null],
      ['north', 0],
      ['m1', 1],
      ['m2', 1],
    ]);
    for (const { authorised, running } of places) expect(running).toEqual(authorised);
    expect(places.map(({ running }) => running.get('MARGIN-1')?.limit)).toEqual([5000, 5000, 6000, 5000]);
  });
});

describe('the audit of settings', () => {
  it('finds nothing where nothing was changed, or all was set back', () => {
    expect(audited([])).toEqual([]);
    expect(audited([record('one', m1, 8000), record('two', m1, 6000)])).toEqual([]);
  });

  it('names the last change of the place itself', () => {
    expect(audited([record('one', m1, 7000), record('two', m1, 8000)])).toEqual([['m1', 'limit', 6000, 8000, 'two']]);
  });

  it('names a change of the site where it holds, and not at a unit with a limit of its own', () => {
    // The hall is told apart as the file gives it a delay of its own.
    expect(audited([record('one', site, 7000)])).toEqual([
      ['site', 'limit', 5000, 7000, 'one'],
      ['north', 'limit', 5000, 7000, 'one'],
    ]);
  });

  it('names the nearest change behind each place', () => {
    expect(audited([record('one', m1, 8000), record('two', north, 7000)])).toEqual([
      ['north', 'limit', 5000, 7000, 'two'],
      ['m1', 'limit', 6000, 8000, 'one'],
    ]);
  });

  it('does not take a change of one entry for one of another', () => {
    expect(audited([record('one', m1, 8000)], 'MARGIN-2')).toEqual([]);
  });
});
