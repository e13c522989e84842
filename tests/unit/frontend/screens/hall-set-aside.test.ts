import { describe, expect, it } from 'vitest';
import { sayBelowGuard } from '../../../../frontend/src/components/below-guard';
import { byNeed, needOf } from '../../../../frontend/src/screens/hall/need-of';
import { sayHall } from '../../../../frontend/src/screens/hall/say-hall';
import { smallWords } from '../../../../frontend/src/screens/hall/small-words';
import { wallNeeds } from '../../../../frontend/src/screens/hall/wall-needs';
import { sayNoneStands } from '../../../../frontend/src/screens/alarms/say-none-stands';
import { aFigure, aLine, aWindow } from '../../../screens/fixtures/builders';

const calm = aLine('e1');
const aside = aLine('e2', { setAsideHolding: 2 });
const unsure = aFigure(5_400, { expandedUncertainty: 800 });
const stopped = aLine('e3', { pressureWindow: aWindow({ vacuumMarginWorst: unsure }) });
const low = aLine('e4', { pressureWindow: aWindow({ vacuumMargin: unsure, vacuumMarginWorst: unsure }) });

describe('a hall in which an alarm is set aside while its condition holds', () => {
  it('is not calm by it, and says how many', () => {
    expect(needOf(aside)).toBe('aside');
    expect(sayHall({ loops: [calm, aside] }, 0)).toMatchObject({
      calm: false,
      text: '2 alarms are set aside while their conditions hold.',
      needs: 0,
      aside: 2,
    });
    expect(sayHall({ loops: [calm], besideSetAside: 1 }, 0)).toMatchObject({
      calm: false,
      text: '1 alarm is set aside while its condition holds.',
      aside: 1,
    });
  });

  it('is not called as usual either where the unit is vented under a permit', () => {
    const vented = { mode: 'vented', ventedNotProtected: true } as const;
    expect(needOf(aLine('e2', vented))).toBe('work');
    expect(needOf(aLine('e2', { ...vented, setAsideHolding: 1 }))).toBe('aside');
  });

  it('names the loop on the wall and in its row', () => {
    expect(wallNeeds([calm, aside], () => undefined).map(({ name, text }) => [name, text])).toEqual([
      ['E2', '2 alarms are set aside while their conditions hold'],
    ]);
    expect(smallWords(aside)).toBe('2 alarms are set aside while their conditions hold');
  });

  it('says so in place of an empty list of alarms, too', () => {
    expect(sayNoneStands(0, 1)).toBe('No alarm is told, but 1 alarm is set aside while its condition holds.');
    expect(sayNoneStands(1, 1)).toContain('nothing is known. And 1 alarm is set aside while its condition holds.');
  });
});

describe('a loop whose margin holds only as long as the water flows', () => {
  it('is told by its alarm, and set aside by what is set aside: beside a guard it turns no row and no word about each second', () => {
    expect(needOf(stopped)).toBe('calm');
    expect(needOf({ ...stopped, setAsideHolding: 1 })).toBe('aside');
    expect(byNeed([calm, low, aside]).map(({ unit }) => unit)).toEqual(['e2', 'e4', 'e1']);
    expect(needOf({ ...low, setAsideHolding: 1 })).toBe('aside');
  });

  it('is said at the loop, apart from one that lies below it now', () => {
    expect(sayBelowGuard(calm.pressureWindow)).toBeNull();
    expect(sayBelowGuard(stopped.pressureWindow)).toBe('the vacuum margin may lie below its guard if the flow stops');
    expect(sayBelowGuard(low.pressureWindow)).toBe('a margin may lie below its guard');
  });
});
