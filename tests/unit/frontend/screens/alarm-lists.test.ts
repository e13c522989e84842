import type { Alarm } from '@ebbline/shared/contract/alarm';
import { describe, expect, it } from 'vitest';
import { orderAlarms } from '../../../../frontend/src/components/order-alarms';
import { onResponseAxis, responseTime, toldAt } from '../../../../frontend/src/components/response-time';
import { shelvingWish } from '../../../../frontend/src/components/shelving';
import {
  everything,
  isNarrowed,
  readAlarmsAddress,
  writeAlarmsAddress,
} from '../../../../frontend/src/screens/alarms/alarms-address';
import { freshlyTold, sayTold } from '../../../../frontend/src/components/announce';
import {
  journalFilter,
  readJournalAddress,
  writeJournalAddress,
} from '../../../../frontend/src/screens/alarms/journal-address';
import { firstOutsFirst, narrowGroups } from '../../../../frontend/src/screens/alarms/narrow-alarms';
import { sayUntil } from '../../../../frontend/src/screens/alarms/set-aside-words';
import { plain } from '../../../screens/fixtures/loop-shown';
import { anAlarm, aSetAside, noon } from '../../../screens/fixtures/builders';

const say = (alarm: Alarm): string => `${alarm.title} ${alarm.entry}`;
const groupsOf = (...alarms: Alarm[]) => orderAlarms(alarms);
const ids = (groups: readonly { alarm: Alarm }[]): string[] => groups.map(({ alarm }) => alarm.id);

describe('the address of an alarm list', () => {
  it('gives back what was put into it, and nothing where nothing is narrowed', () => {
    const view = { hall: null, unit: 'e7', priorities: [1, 3] as const, answer: 'waiting', text: 'air in' } as const;
    expect(readAlarmsAddress(writeAlarmsAddress(view))).toEqual(view);
    expect(writeAlarmsAddress(everything)).toEqual({});
    expect(isNarrowed(everything)).toBe(false);
  });

  it('takes nothing that it does not know', () => {
    const view = readAlarmsAddress({ priority: '4,1,x', state: 'none', hall: ['a', 'b'], unit: '' });
    expect(view).toEqual({ ...everything, priorities: [1] });
  });
});

describe('a narrowed list', () => {
  const groups = groupsOf(
    anAlarm('a', { priority: 1, title: 'Flow lost', unit: 'e1' }),
    anAlarm('b', { priority: 3, title: 'Supply warm', foldedUnder: 'a' }),
    anAlarm('c', { priority: 2, state: 'acknowledged' }),
  );

  it('shows a case whole where any of it fits', () => {
    const found = narrowGroups(groups, { ...everything, text: 'SUPPLY warm' }, say);
    expect(found.shown.map(({ alarm, folded }) => [alarm.id, ...folded.map(({ id }) => id)])).toEqual([['a', 'b']]);
  });

  it('says how many are not shown, and the worst of them', () => {
    const found = narrowGroups(groups, { ...everything, answer: 'seen' }, say);
    expect(ids(found.shown)).toEqual(['c']);
    expect(found).toMatchObject({ hidden: 2, worstHidden: 1 });
    expect(narrowGroups(groups, everything, say)).toMatchObject({ hidden: 0, worstHidden: null });
  });

  it('sets the first-outs of a flood on top, as they came', () => {
    const many = groupsOf(anAlarm('x', { priority: 1 }), anAlarm('y', { priority: 3 }), anAlarm('z', { priority: 2 }));
    expect(ids(firstOutsFirst(many, ['y', 'gone', 'z']))).toEqual(['y', 'z', 'x']);
    expect(ids(firstOutsFirst(many, ['y', 'gone', 'more', 'z']))).toEqual(['y', 'x', 'z']);
  });
});

describe('the time to respond', () => {
  it('counts from when the alarm was told, and anew where it was told again', () => {
    const alarm = anAlarm('a', { since: '2026-03-01T11:40:00.000Z', stateSince: '2026-03-01T11:58:00.000Z' });
    expect(responseTime(alarm, noon)).toEqual({ toldSeconds: -120, dueSeconds: 360, wholeSeconds: 480 });
    const told = { ...alarm, state: 'acknowledged', annunciatedAt: '2026-03-01T11:50:00.000Z' } as const;
    expect(responseTime(told, noon)).toMatchObject({ toldSeconds: -600, dueSeconds: -120 });
    expect(toldAt({ ...alarm, state: 'acknowledged' })).toBe(alarm.since);
  });

  it('does not run where the condition has gone, or the time is not known', () => {
    expect(responseTime(anAlarm('a', { state: 'returnedUnacknowledged' }), noon)).toBeNull();
    expect(responseTime(anAlarm('a'), null)).toBeNull();
  });

  it('stands on an axis that only ever rises and ends at its ends', () => {
    const seconds = [-1e9, -7200, -60, -1, 0, 1, 60, 86_400, 1e9];
    const places = seconds.map(onResponseAxis);
    expect(places.slice(1, -1)).toEqual([...new Set(places)].sort((a, b) => a - b));
    expect([places[0], places.at(-1)]).toEqual([0, 1]);
  });
});

describe('a wish to shelve', () => {
  it.each([
    [{ reason: 'ok', minutes: 30 }],
    [{ reason: '   ', minutes: 30 }],
    [{ reason: 'sensor is changed', minutes: 0 }],
    [{ reason: 'sensor is changed', minutes: 481 }],
    [{ reason: 'sensor is changed', minutes: 1.5 }],
    [{ reason: 'sensor is changed', minutes: '' as const }],
  ])('is none without a reason and a time within bounds: %j', (form) => {
    expect(shelvingWish(form)).toBeNull();
  });

  it('holds a reason and whole minutes', () => {
    expect(shelvingWish({ reason: ' sensor is changed ', minutes: 480 })).toEqual({
      reason: 'sensor is changed',
      minutes: 480,
    });
  });
});

describe('the end of what is set aside', () => {
  const said = (more: Parameters<typeof aSetAside>[1]): string => plain(sayUntil(aSetAside('a', more), noon, 'UTC'));

  it('is counted down by the time of the server', () => {
    expect(said({ until: '2026-03-01T12:10:00.000Z' })).toBe('10 min left, until 12:10:00');
    expect(said({ until: '2026-03-01T12:00:00.000Z' })).toBe('ends now, 12:00:00');
  });

  it('is only planned out of service, and says where that time is over', () => {
    expect(said({ mode: 'outOfService', until: null })).toBe('no end planned');
    expect(said({ mode: 'outOfService', until: '2026-03-01T11:00:00.000Z' })).toBe('planned until 11:00:00, overdue');
  });
});

describe('what is told aloud', () => {
  it('is each telling once, in one sentence, and not what follows from another', () => {
    const known = new Set<string>();
    const first = anAlarm('a', { priority: 3, title: 'Filter loaded' });
    expect(freshlyTold([first], known)).toEqual([first]);
    const worse = anAlarm('b', { priority: 1, title: 'Flow lost' });
    const fresh = freshlyTold([first, worse, anAlarm('c', { foldedUnder: 'b' })], known);
    expect(fresh).toEqual([worse]);
    expect(sayTold(fresh, ({ title }) => title)).toBe('New alarm, act now: Flow lost');
    expect(sayTold([first, worse], ({ title }) => title)).toBe('2 new alarms, the worst, act now: Flow lost');
    expect(freshlyTold([{ ...first, stateSince: noon }], known)).toHaveLength(1);
    const onItsOwn = anAlarm('c', {});
    expect(freshlyTold([worse, onItsOwn], known)).toEqual([onItsOwn]);
    expect(freshlyTold([worse, onItsOwn], known)).toEqual([]);
  });
});

describe('what is looked for in the journal', () => {
  it('is kept in the address', () => {
    const address = { unit: 'e7', priority: '1', kind: 'action', text: 'hose', from: '2026-03-01T10:00' };
    expect(writeJournalAddress(readJournalAddress(address))).toEqual(address);
    expect(writeJournalAddress(readJournalAddress({}))).toEqual({});
    expect(writeJournalAddress(readJournalAddress({ last: '0' }))).toEqual({ last: '0' });
  });

  it('counts a period back from the time in force, or takes the times that are given, in the site’s zone', () => {
    expect(journalFilter(readJournalAddress({ last: '1' }), noon, 'UTC')).toEqual({ from: '2026-03-01T11:00:00.000Z' });
    const given = readJournalAddress({ from: '2026-03-01T12:00', to: '2026-03-01T13:00', hall: 'east' });
    expect(journalFilter(given, noon, 'Europe/Oslo')).toEqual({
      hall: 'east',
      from: '2026-03-01T11:00:00.000Z',
      to: '2026-03-01T12:00:00.000Z',
    });
  });

  it('leaves out words that hold neither letter nor digit', () => {
    expect(journalFilter(readJournalAddress({ last: '0', text: '–' }), noon, 'UTC')).toEqual({});
  });
});
