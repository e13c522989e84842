import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { entryIds } from '../../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { gradeOf } from '../../../../../../backend/src/evaluation/alarm-rules/priority';
import { alarmClasses } from '../../../../../../backend/src/evaluation/alarm-rules/rationale/alarm-classes';
import {
  rationaleTable,
  shareOfPriority1,
  unitOfSetting,
} from '../../../../../../backend/src/evaluation/alarm-rules/rationale/rationale-table';

/** What ISA-TR18.2.2-2016 names of a rationalized alarm (from memory): type, set point, cause, consequence, action, priority, class. */
describe.each(entryIds)('%s', (id) => {
  const entry = catalogue[id];
  const further = rationaleTable[id];

  it('leaves more time to respond than its first action takes, with worse signs too', () => {
    expect(further.timeNeededS).toBeGreaterThan(0);
    expect(further.timeNeededS).toBeLessThan(entry.timeToRespondS);
    if (entry.worse !== null) expect(further.timeNeededS).toBeLessThan(entry.worse.timeToRespondS);
  });

  it('belongs to a class with an owner and a time of review', () => {
    const rules = alarmClasses[further.class];
    expect(rules.owner.length).toBeGreaterThan(3);
    // Highly managed alarms are reviewed every year (common practice, no source).
    expect(rules.reviewMonths).toBe(rules.highlyManaged ? 12 : 24);
  });

  it('names the limit of the plant behind it in a whole sentence, where there is one', () => {
    if (further.designLimit !== null) expect(further.designLimit).toMatch(/^[A-Z].{10,}\.$/);
    if (further.stateDependent !== null) expect(further.stateDependent).toMatch(/^[A-Z].{10,}\.$/);
  });

  it('has a default that stands on the alarm’s side of what a sound plant reads, deadband and all', () => {
    const { limit, deadband, low } = entry.defaults;
    const { setting } = further;
    if (setting.limit === null) expect(unitOfSetting(id)).toBeNull();
    else expect(unitOfSetting(id)).not.toBeNull();
    if (setting.sound !== null && setting.side === 'above')
      expect(limit - deadband).toBeGreaterThanOrEqual(setting.sound);
    if (setting.sound !== null && setting.side === 'below') expect(limit + deadband).toBeLessThanOrEqual(setting.sound);
    expect(low !== undefined).toBe(setting.side === 'band' || setting.side === 'ends');
  });
});

describe('the whole table', () => {
  it('holds alarms of water, margin, air and lost flow in classes that are highly managed', () => {
    for (const id of ['WATER-1', 'MARGIN-1', 'MARGIN-2', 'AIR-1', 'AIR-4', 'FLOW-2'] as const)
      expect(alarmClasses[rationaleTable[id].class].highlyManaged, id).toBe(true);
  });

  it('counts the share of priority 1 among alarms, alerts left out', () => {
    const grades = entryIds.map((id) => gradeOf(catalogue[id].severity, catalogue[id].timeToRespondS));
    const alerts = grades.filter((grade) => grade === 'alert').length;
    expect(alerts).toBeGreaterThan(0);
    expect(shareOfPriority1()).toBeCloseTo(6 / (entryIds.length - alerts), 12);
  });
});

/** Severity and time to respond worked through the grid by hand: one of each cell. */
describe('priority as computed', () => {
  it.each([
    ['WATER-1', 1],
    ['MARGIN-1', 2],
    ['VSRC-2', 3],
    ['MARGIN-2', 3],
    ['PUMP-1', 2],
    ['ISOL-1', 3],
    ['CHEM-1', 'alert'],
    ['SYS-4', 'alert'],
  ] as const)('of %s is %s', (id, grade) => {
    expect(gradeOf(catalogue[id].severity, catalogue[id].timeToRespondS)).toBe(grade);
  });
});
