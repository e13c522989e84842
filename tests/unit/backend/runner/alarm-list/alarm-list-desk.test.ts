import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';
import { describe, expect, it } from 'vitest';
import type { SettingRecord } from '../../../../../backend/src/evaluation/alarm-rules/settings/setting-record';
import { toSettings } from '../../../../../backend/src/evaluation/alarm-rules/settings/to-settings';
import { compiledOrThrow, smallSite, smallSiteDocument } from '../../../../helpers/small-site';
import { m1, m2, opened, startMs } from './opened-desk';

/** The small site without unit m2, or with a second step that m2's change has passed. */
const withStep = () =>
  compiledOrThrow({ ...(smallSiteDocument() as object), limits: { 'MARGIN-2': { limit: '4 kPa' } } });

const record = (scope: SettingScope, limit: number): SettingRecord => ({
  id: 'setting-1',
  atMs: startMs,
  entry: 'MARGIN-1',
  scope,
  set: { limit },
  old: toSettings('MARGIN-1', undefined),
  new: { ...toSettings('MARGIN-1', undefined), limit },
  reason: 'a drill',
  link: '',
  operator: 'Ines',
  station: 'desk',
});

describe('two engineers who change one setting at once', () => {
  it('are told apart by what each has seen: the second is refused, with who was first, when and why', () => {
    const { ask, desk } = opened();
    const basedOn = { limit: 6000, deadband: 500 };
    expect(ask('Ines', { set: { limit: 7000 }, basedOn }).ok).toBe(true);
    const second = ask('Otto', { set: { limit: 8000 }, basedOn });
    expect(second).toMatchObject({ ok: false, fault: { code: 'SETTING_CHANGED_MEANWHILE' } });
    if (second.ok) return;
    expect(second.fault.message).toContain('by Ines at 2031-05-06T07:02:00.000Z: “asked by Ines”');
    expect(second.fault.message).toContain('limit is 7000 Pa and no longer 6000 Pa');
    expect(second.fault.members).toMatchObject({
      running: { limit: 7000 },
      change: { actor: 'Ines', new: { limit: 7000 } },
    });
    expect(desk.changes().changes).toHaveLength(1);
    // Whoever has seen it may change it.
    expect(ask('Otto', { set: { limit: 8000 }, basedOn: { ...basedOn, limit: 7000 } }).ok).toBe(true);
  });

  it('are refused too where both want the same, and where only what the second does not touch is another', () => {
    const { ask } = opened();
    ask('Ines', { set: { limit: 7000 } });
    const code = { ok: false, fault: { code: 'SETTING_CHANGED_MEANWHILE' } };
    expect(ask('Otto', { set: { limit: 7000 }, basedOn: { limit: 6000 } })).toMatchObject(code);
    expect(ask('Otto', { set: { onDelaySeconds: 20 }, basedOn: { limit: 6000 } })).toMatchObject(code);
    expect(ask('Otto', { set: { onDelaySeconds: 20 }, basedOn: { onDelaySeconds: 15 } }).ok).toBe(true);
  });

  it('are told that a site file was first', () => {
    const { ask, settings } = opened();
    settings.follow(withStep());
    const asked = ask('Otto', { entry: 'MARGIN-2', set: { limit: 100 }, basedOn: { limit: 0 } });
    expect(asked).toMatchObject({ fault: { members: { running: { limit: 4000 }, change: null } } });
    expect((asked as { fault: { message: string } }).fault.message).toContain('by another site file');
  });
});

describe('a change that a new site file leaves behind', () => {
  it('is in force no more, and stands in the audit, in the list of changes, in the journal and in health', () => {
    const { desk, refused, settings, told } = opened([record(m2, 3000)]);
    refused.look();
    expect([told, refused.reasons()]).toEqual([[], []]);
    settings.follow(withStep());
    refused.look();
    refused.look();
    expect(told).toEqual([
      expect.stringMatching(
        /^settingRefused: The change of MARGIN-1 for unit m2 by Ines at .* is not in force: At unit m2/,
      ),
    ]);
    expect(refused.reasons()).toMatchObject([{ code: 'SETTINGS_REFUSED' }]);
    expect(desk.audit().refused).toMatchObject([
      { id: 'setting-1', actor: 'Ines', reason: 'a drill', refused: { code: 'SETTING_STEPS' } },
    ]);
    expect(desk.changes().changes).toMatchObject([{ id: 'setting-1', refused: { code: 'SETTING_STEPS' } }]);
    expect(desk.audit().findings.filter(({ scope }) => scope.kind === 'unit' && scope.id === 'm2')).toEqual([]);
  });

  it('is told again until the journal has taken it, and once more when it fits again', () => {
    const { goOn, refused, settings, stop, told } = opened([record(m2, 3000)]);
    settings.follow(withStep());
    stop();
    refused.look();
    expect([told, refused.reasons().length]).toEqual([[], 1]);
    goOn();
    refused.look();
    settings.follow(smallSite());
    refused.look();
    expect(told.map((line) => line.split(':')[0])).toEqual(['settingRefused', 'settingFits']);
    expect([told[1], refused.reasons()]).toEqual([expect.stringContaining('fits the site file again'), []]);
  });

  it('is settled by setting the place anew, be it to what runs there', () => {
    const { ask, desk, refused, settings, told } = opened([record(m2, 3000)]);
    settings.follow(withStep());
    refused.look();
    const running = 5000;
    // What runs at the other unit is no reason to take it: nothing is refused there.
    expect(ask('Otto', { scope: m1, set: { limit: 6000 } })).toMatchObject({ ok: false });
    expect(ask('Otto', { scope: m2, set: { limit: running } })).toMatchObject({
      ok: true,
      value: { old: { limit: running }, new: { limit: running } },
    });
    expect([desk.audit().refused, refused.reasons()]).toEqual([[], []]);
    expect(told[1]).toContain('was followed by a later one');
  });

  it('degrades nothing where its place is gone for good, and stays in the audit', () => {
    const { desk, refused } = opened([record({ kind: 'unit', id: 'm9' }, 7000)]);
    refused.look();
    expect(refused.reasons()).toEqual([]);
    expect(desk.audit().refused).toMatchObject([{ refused: { code: 'SETTING_SCOPE_UNKNOWN' } }]);
  });
});

describe('a record of before an alarm could be told again', () => {
  it('is told with none of it', () => {
    const { reAlarmAfterSeconds, action, ...older } = toSettings('MARGIN-1', undefined);
    expect([reAlarmAfterSeconds, action]).toEqual([null, null]);
    const { desk } = opened([{ ...record(m1, 7000), old: older, new: { ...older, limit: 7000 } } as SettingRecord]);
    expect(desk.changes().changes[0]?.old).toEqual({ ...older, reAlarmAfterSeconds: null, action: null });
  });
});

describe('the share of alarms at priority 1', () => {
  it('is told of the entries, and of the alarms that this site can tell', () => {
    const { desk, ask } = opened();
    const before = desk.list({});
    const sum = before.entries
      .filter(({ priority }) => priority === 1)
      .reduce((all, { configured = 0 }) => all + configured, 0);
    expect(before.configured?.priority1).toBe(sum);
    expect(before.configured?.alarms).toBeGreaterThan(sum);
    // Water, one alarm a unit: out of use at one of the two.
    const water = before.entries.find(({ entry }) => entry === 'WATER-1');
    expect(ask('Ines', { entry: 'WATER-1', scope: m1, set: { enabled: false } }).ok).toBe(true);
    const after = desk.list({});
    expect(after.entries.find(({ entry }) => entry === 'WATER-1')?.configured).toBe((water?.configured ?? 0) - 1);
    expect(after.configured?.priority1).toBe(sum - 1);
  });
});

describe('the search of the list', () => {
  it.each([
    ['barometer of the hall', ['AMB-1']],
    ['AMB-1', ['AMB-1']],
    ['  Barometer   NEIGHBOURING ', ['AMB-1']],
    ['nothing has this word', []],
  ])('for %j finds %j', (search, found) => {
    const { desk } = opened();
    expect(desk.list({ search }).entries.map(({ entry }) => entry)).toEqual(expect.arrayContaining(found));
    if (found.length === 0) expect(desk.list({ search }).entries).toEqual([]);
    else expect(desk.list({ search }).entries.length).toBeLessThan(6);
  });

  it('finds words of the site, and keeps to what differs where that is asked', () => {
    const { desk, ask } = opened();
    expect(desk.list({ differing: true }).entries).toEqual([]);
    ask('Ines', { set: { action: 'Call the hall desk at once.' } });
    expect(desk.list({ search: 'hall desk' }).entries.map(({ entry }) => entry)).toEqual(['MARGIN-1']);
    const [only, ...more] = desk.list({ differing: true }).entries;
    expect([only?.entry, more]).toEqual(['MARGIN-1', []]);
    expect(only?.settings.filter(({ differs }) => differs.length > 0)).toMatchObject([
      { scope: m1, differs: ['action'], running: { action: 'Call the hall desk at once.' } },
    ]);
    expect(desk.list({ differing: true, search: 'no such' }).entries).toEqual([]);
  });
});

describe('a change of a highly managed entry', () => {
  const otto = { name: 'Otto', station: 'desk' };

  it('is held and not in force until another person approves, and then told with both names', () => {
    const { desk, journal, propose, settings } = opened();
    const asked = propose('Ines', { set: { limit: 7000 } });
    if (!asked.ok) throw new Error(asked.fault.message);
    expect(asked.value).toMatchObject({
      held: 'awaitsSecond',
      actor: 'Ines',
      old: { limit: 6000 },
      new: { limit: 7000 },
    });
    expect([settings.records(), desk.changes().changes]).toEqual([[], []]);
    expect(desk.changes().proposed).toEqual([asked.value]);
    const { id } = asked.value;
    for (const actor of [
      { name: 'Ines', station: 'another desk' },
      { name: ' ines', station: 'desk' },
      { ...otto, byToken: true as const },
    ])
      expect(desk.decide(id, 'approve', actor)).toMatchObject({ ok: false, fault: { code: 'SETTING_SECOND' } });
    expect(settings.records()).toEqual([]);
    const done = desk.decide(id, 'approve', otto);
    expect(done).toMatchObject({ ok: true, value: { actor: 'Ines', approvedBy: 'Otto', new: { limit: 7000 } } });
    expect(done.ok && done.value.held).toBe(undefined);
    expect(settings.records()).toMatchObject([{ set: { limit: 7000 }, operator: 'Ines', approvedBy: 'Otto' }]);
    expect(desk.changes().proposed).toEqual([]);
    expect(journal).toEqual(['settingProposed by Ines', 'settingChanged by Ines']);
    expect(desk.decide(id, 'approve', otto)).toMatchObject({ fault: { code: 'SETTING_PROPOSAL_UNKNOWN' } });
  });

  it('is asked for by a person who names its approval, and once at a place', () => {
    const { desk, propose } = opened();
    const code = (given: ReturnType<typeof propose>) => (given.ok ? given.value.held : given.fault.code);
    expect(code(propose('Ines', { set: { limit: 7000 }, link: '' }))).toBe('SETTING_LINK');
    expect(code(propose('Ines', { set: { limit: 7000 } }, true))).toBe('SETTING_SECOND');
    expect(desk.changes().proposed).toEqual([]);
    expect(code(propose('Ines', { set: { limit: 7000 } }))).toBe('awaitsSecond');
    expect(code(propose('Otto', { set: { limit: 8000 } }))).toBe('SETTING_PROPOSED');
    expect(code(propose('Otto', { set: { limit: 8000 }, scope: m2 }))).toBe('awaitsSecond');
  });

  it('is withdrawn by whoever asked, by name, and is not made where something else runs by now', () => {
    const { desk, journal, propose, settings } = opened();
    const first = propose('Ines', { set: { limit: 7000 } });
    if (!first.ok) throw new Error(first.fault.message);
    expect(desk.decide(first.value.id, 'withdraw', { name: 'Ines', station: 'desk' })).toMatchObject({
      value: { held: 'withdrawn' },
    });
    expect([journal.at(-1), desk.changes().proposed, settings.records()]).toEqual(['settingWithdrawn by Ines', [], []]);
    const second = propose('Ines', { set: { limit: 7000 } });
    settings.add(record(m1, 8000));
    expect(second.ok && desk.decide(second.value.id, 'approve', otto)).toMatchObject({
      fault: { code: 'SETTING_CHANGED_MEANWHILE' },
    });
  });

  it('is neither held nor put in force where the journal takes no row', () => {
    const { desk, goOn, propose, settings, stop } = opened();
    stop();
    expect(propose('Ines', { set: { limit: 7000 } })).toMatchObject({ fault: { code: 'JOURNAL_UNAVAILABLE' } });
    goOn();
    const asked = propose('Ines', { set: { limit: 7000 } });
    stop();
    for (const decision of ['approve', 'withdraw'] as const)
      expect(asked.ok && desk.decide(asked.value.id, decision, otto)).toMatchObject({
        fault: { code: 'JOURNAL_UNAVAILABLE' },
      });
    expect([desk.changes().proposed?.length, settings.records()]).toEqual([1, []]);
  });

  it('is made at once where its class is not highly managed, with no approval named', () => {
    const { propose } = opened();
    const done = propose('Ines', { entry: 'DEW-1', set: { limit: 3 }, link: '' });
    expect(done).toMatchObject({ ok: true, value: { new: { limit: 3 } } });
    expect(done.ok && done.value.held).toBe(undefined);
  });
});
