import type { Alarm } from '@ebbline/shared/contract/alarm';
import { describe, expect, it } from 'vitest';
import { orderAlarms } from '../../../../frontend/src/components/order-alarms';
import type { ListedGroup } from '../../../../frontend/src/screens/alarms/keep-order';
import { keepOrder, list } from '../../../../frontend/src/screens/alarms/keep-order';
import { anAlarm } from '../../../screens/fixtures/builders';

const listOf = (...alarms: Alarm[]) => list(orderAlarms(alarms));
const tail = (id: string, priority: 1 | 2 | 3, foldedUnder = 'h'): Alarm => anAlarm(id, { priority, foldedUnder });

/** @param unfolded first-outs under which what follows is on the screen */
function keep(
  before: readonly ListedGroup[],
  alarms: readonly Alarm[],
  unfolded: readonly string[] = [],
  fits: (alarm: Alarm) => boolean = () => true,
): readonly ListedGroup[] {
  return keepOrder(
    before,
    orderAlarms(alarms).filter(({ alarm }) => fits(alarm)),
    {
      standing: new Map(alarms.map((alarm) => [alarm.id, alarm])),
      isUnfolded: (id) => unfolded.includes(id),
    },
  );
}
const rows = (groups: readonly ListedGroup[]): string[] =>
  groups.map(({ alarm, folded }) => [alarm, ...folded.map((one) => one.alarm)].map(({ id }) => id).join(' > '));

describe('a list in which somebody is', () => {
  const before = listOf(anAlarm('a', { priority: 2 }), anAlarm('b', { priority: 3 }));

  it('keeps every row where it is: what is new stands last, what has gone keeps its place', () => {
    const next = keep(before, [anAlarm('n', { priority: 1 }), anAlarm('b', { priority: 1 })]);
    expect(next.map(({ alarm, gone, late }) => [alarm.id, gone, late])).toEqual([
      ['a', true, false],
      ['b', false, false],
      ['n', false, true],
    ]);
    expect(next[1]?.alarm.priority).toBe(1);
  });

  it('takes back a row that comes again, in its place', () => {
    const empty = keep(before, []);
    expect(keep(empty, [anAlarm('b')]).map(({ gone }) => gone)).toEqual([true, false]);
  });

  it.each([[[]], [['h']]])('keeps the order of what follows from an alarm too, unfolded under %j', (unfolded) => {
    const first = listOf(anAlarm('h'), tail('t2', 2), tail('t3', 3));
    const next = keep(first, [anAlarm('h'), tail('t1', 1), tail('t3', 3)], unfolded);
    expect(next[0]?.folded.map(({ alarm, gone }) => [alarm.id, gone])).toEqual([
      ['t2', true],
      ['t3', false],
      ['t1', false],
    ]);
  });

  it('calls gone only what stands no longer, and knows the newest of what no longer fits', () => {
    const seen = anAlarm('a', { state: 'acknowledged' });
    const next = keep(before, [seen, anAlarm('b')], [], ({ state }) => state === 'unacknowledged');
    expect(next.map(({ alarm, gone, unfit }) => [alarm.id, gone, unfit])).toEqual([
      ['a', false, true],
      ['b', false, false],
    ]);
    expect(next[0]?.alarm.state).toBe('acknowledged');
    expect(keep(next, [anAlarm('b')])[0]).toMatchObject({ gone: true, unfit: false });
  });
});

describe('an alarm that is folded under another while somebody is in the list', () => {
  const before = listOf(tail('b', 2), tail('c', 3));

  it('stays where it stands, once, and is not gone', () => {
    const next = keep(before, [anAlarm('h', { priority: 1 }), tail('b', 2), tail('c', 3), tail('d', 3)]);
    expect(rows(next)).toEqual(['b', 'c', 'h > d']);
    expect(next.map(({ gone, unfit, late }) => [gone, unfit, late])).toEqual([
      [false, false, false],
      [false, false, false],
      [false, false, true],
    ]);
  });

  it('leaves what lay folded under itself to its first-out', () => {
    const pair = listOf(anAlarm('b'), tail('c', 3, 'b'));
    expect(rows(keep(pair, [anAlarm('h'), tail('b', 2), tail('c', 3)]))).toEqual(['b', 'h > c']);
  });
});

describe('an alarm that stands for itself again while somebody is in the list', () => {
  const before = listOf(anAlarm('h', { priority: 1 }), tail('b', 2), anAlarm('z', { priority: 3 }));
  const alone = [anAlarm('b'), anAlarm('z', { priority: 3 })];

  it('comes into sight at the end where it lay folded', () => {
    const next = keep(before, alone);
    expect(rows(next)).toEqual(['h', 'z', 'b']);
    expect(next.map(({ gone, late }) => [gone, late])).toEqual([
      [true, false],
      [false, false],
      [false, true],
    ]);
  });

  it('keeps its place where that is on the screen, and no longer follows from what it stands under', () => {
    const next = keep(before, alone, ['h']);
    expect(rows(next)).toEqual(['h > b', 'z']);
    expect(next[0]?.folded[0]).toMatchObject({ gone: false, astray: true });
  });

  it('has what follows from it beside it there', () => {
    const next = keep(before, [...alone, tail('c', 3, 'b')], ['h']);
    expect(rows(next)).toEqual(['h > b > c', 'z']);
  });
});
