import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { alarmListText } from '../../../../../backend/src/connections/site-files/alarm-list-text';
import { alarmListFromText, readAlarmList } from '../../../../../backend/src/connections/site-files/read-alarm-list';
import { readSiteFile } from '../../../../../backend/src/connections/site-files/read-site-file';
import { entryIds } from '../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import type { SettingRecord } from '../../../../../backend/src/evaluation/alarm-rules/settings/setting-record';
import { toSettings } from '../../../../../backend/src/evaluation/alarm-rules/settings/to-settings';
import type { CompiledSite } from '../../../../../backend/src/evaluation/site/compiled-site';
import type { AuthorisedList } from '../../../../../backend/src/ports/authorised-list';
import { findingsOf } from '../../../../../backend/src/runner/alarm-list/audit';
import { listToApprove } from '../../../../../backend/src/runner/alarm-list/list-to-approve';
import { listedSettings } from '../../../../../backend/src/runner/alarm-list/listed-settings';
import { placesOf } from '../../../../../backend/src/runner/alarm-list/places';
import { SettingsInForce } from '../../../../../backend/src/runner/alarm-list/settings-in-force';
import { toListedAlarm } from '../../../../../backend/src/runner/alarm-list/to-listed-alarm';
import { compiledOrThrow, smallSite, smallSiteDocument } from '../../../../helpers/small-site';

const demo = (name: string): string =>
  fileURLToPath(new URL(`../../../../../simulator/demo-site/${name}`, import.meta.url));

async function demoSite(): Promise<CompiledSite> {
  const read = await readSiteFile(demo('site.yaml'));
  if (!read.ok) throw new Error('the demo site is refused');
  return read.value.site;
}

const findings = (settings: SettingsInForce, list: AuthorisedList) => {
  const places = placesOf(settings, list);
  const entries = entryIds.map((id) => toListedAlarm(id, listedSettings(id, places), list));
  return findingsOf(entries, settings.records(), settings.site());
};

/** What is written of what runs, approved and read again. */
function approved(settings: SettingsInForce, before: AuthorisedList | null = null): AuthorisedList {
  const text = alarmListText(listToApprove(settings, before))
    .replace('version:', 'version: "1"')
    .replace('approvedBy:', 'approvedBy: the cooling engineer')
    .replace('approvedOn:', 'approvedOn: 2031-05-28');
  const read = alarmListFromText(text, 'list.yaml', settings.site());
  if (!read.ok) throw new Error(JSON.stringify(read.fault));
  return read.value;
}

const change = (limit: number, link = ''): SettingRecord => ({
  id: `setting-${limit}`,
  atMs: 0,
  entry: 'MARGIN-1',
  scope: { kind: 'unit', id: 'm1' },
  set: { limit },
  old: toSettings('MARGIN-1', undefined),
  new: { ...toSettings('MARGIN-1', undefined), limit },
  reason: 'a reason',
  link,
  operator: 'Ines',
  station: 'desk',
});

describe('a list that is written of what runs', () => {
  it('is refused until somebody has written who approved it, and when', () => {
    const read = alarmListFromText(
      alarmListText(listToApprove(new SettingsInForce(smallSite(), []), null)),
      'list.yaml',
      smallSite(),
    );
    expect(read.ok ? [] : read.fault.map(({ key }) => key)).toEqual(['version', 'approvedBy', 'approvedOn']);
  });

  it('is what runs, once it was approved: of a small site, of the demo site, and with changes', async () => {
    for (const settings of [
      new SettingsInForce(smallSite(), []),
      new SettingsInForce(smallSite(), [change(7123.456789)]),
      new SettingsInForce(await demoSite(), []),
    ])
      expect(findings(settings, approved(settings))).toEqual([]);
  });

  it('says how long until an alarm is told again, and words of the site, also where a nearer place has none', () => {
    const said = (scope: SettingRecord['scope'], set: SettingRecord['set']): SettingRecord => ({
      ...change(5000),
      scope,
      set,
    });
    const unit = { kind: 'unit', id: 'm1' } as const;
    const settings = new SettingsInForce(smallSite(), [
      said({ kind: 'site' }, { reAlarmAfterSeconds: 14_400, action: 'Site procedure 12.' }),
      said(unit, { reAlarmAfterSeconds: null, action: null }),
    ]);
    expect(settings.refused()).toEqual([]);
    expect(settings.running().units.map(({ limits }) => limits.get('MARGIN-1')?.reAlarmAfterMs)).toEqual([
      Infinity,
      14_400_000,
    ]);
    const list = approved(settings);
    expect(findings(settings, list)).toEqual([]);
    // The list itself holds them: without the changes the site file differs from it in both.
    expect(
      findings(new SettingsInForce(smallSite(), []), list).map(({ scope, member, authorised, running }) => [
        scope.kind === 'site' ? 'site' : scope.id,
        member,
        authorised,
        running,
      ]),
    ).toEqual([
      ['site', 'reAlarmAfterSeconds', 14_400, null],
      ['site', 'action', 'Site procedure 12.', null],
      ['north', 'reAlarmAfterSeconds', 14_400, null],
      ['north', 'action', 'Site procedure 12.', null],
    ]);
  });

  it('holds words of the site for what is judged by the program itself, and no more of it', () => {
    const document = smallSiteDocument() as { limits?: Record<string, unknown> };
    const site = compiledOrThrow({
      ...document,
      limits: { ...document.limits, 'COM-1': { action: 'Call the desk.' } },
    });
    const settings = new SettingsInForce(site, []);
    expect(listToApprove(settings, null).entries['COM-1']?.site).toEqual({ action: 'Call the desk.' });
    expect(findings(settings, approved(settings))).toEqual([]);
    expect(findings(new SettingsInForce(smallSite(), []), approved(settings))).toMatchObject([
      { entry: 'COM-1', member: 'action', authorised: 'Call the desk.', running: null, unit_of_measure: null },
    ]);
  });

  it('has no place that a later change would not be found at', () => {
    const list = approved(new SettingsInForce(smallSite(), []));
    expect(findings(new SettingsInForce(smallSite(), [change(8000)]), list)).toMatchObject([
      { entry: 'MARGIN-1', scope: { kind: 'unit', id: 'm1' }, member: 'limit', authorised: 6000, running: 8000 },
    ]);
  });

  it('keeps owner and review of the list before, and links the last change', () => {
    const before = approved(new SettingsInForce(smallSite(), []));
    const entry = { owner: 'the night shift', reviewBy: '2032-01-02', changeLink: 'change 7' };
    const older = { ...before, entries: new Map([['MARGIN-1', entry]]) };
    const written = (...records: SettingRecord[]) =>
      listToApprove(new SettingsInForce(smallSite(), records), older).entries['MARGIN-1'];
    expect(written()).toMatchObject(entry);
    expect(written(change(7000, 'order 17'), change(8000))).toMatchObject({ ...entry, changeLink: 'order 17' });
  });
});

describe('the authorised list of the demo site', () => {
  it('is what the demo site runs', async () => {
    const site = await demoSite();
    const list = await readAlarmList(demo('alarm-list.yaml'), 'alarm-list.yaml', site);
    if (!list.ok) throw new Error(JSON.stringify(list.fault));
    expect(findings(new SettingsInForce(site, []), list.value)).toEqual([]);
  });
});
