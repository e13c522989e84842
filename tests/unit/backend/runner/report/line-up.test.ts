import { modes } from '@ebbline/shared/contract/http-api';
import { describe, expect, it } from 'vitest';
import { lineUpOf, lineUpPoints } from '../../../../../backend/src/runner/report/line-up';

/** A unit with one branch that runs as it usually does. */
const usual: Readonly<Record<string, number>> = {
  ...{ mode: modes.indexOf('running'), 'control.manual': 0, 'pump.running': 1, 'pump.command': 1, 'pump.available': 1 },
  ...{ 'pump.standby.running': 0, 'vacuum.command': 1, 'vacuum.running': 1, 'vacuum.available': 1 },
  ...{ 'vacuum.standby.running': 0, 'vacuum.trap.full': 0, 'separator.levelHigh': 0, 'valve.command': 0.5 },
  ...{ 'valve.position': 0.52, 'supplyTank.vent.command': 0, 'supplyTank.vent.position': 0 },
  'branch.r5.isolated': 0,
};
const lineUp = (change: Readonly<Record<string, number>>, left: readonly string[] = []) =>
  lineUpOf('n1', ['r5'], new Map(Object.entries({ ...usual, ...change }).filter(([point]) => !left.includes(point))));

describe('the line-up of a unit', () => {
  it('has all fourteen lines as usual where all is', () => {
    expect(lineUp({})).toEqual({ unit: 'n1', offNormal: [], unknown: [], notMeasured: [], asUsual: 14 });
  });

  it.for([
    [{ mode: modes.indexOf('vented') }, 'mode: vented'],
    [{ mode: modes.indexOf('standby') }, 'mode: standby under vacuum'],
    [{ mode: 77 }, 'mode: a number that means none'],
    [{ 'control.manual': 1 }, 'in hand, bypassed or local'],
    [{ 'pump.available': 0 }, 'no standby pump available'],
    [{ 'pump.standby.running': 1 }, 'standby pump runs'],
    [{ 'vacuum.running': 0 }, 'vacuum source told to run, and stands'],
    [{ 'vacuum.command': 0 }, 'vacuum source runs without being told to'],
    [{ 'vacuum.available': 0 }, 'no standby vacuum source available: one is alone'],
    [{ 'vacuum.standby.running': 1 }, 'both vacuum sources run'],
    [{ 'vacuum.trap.full': 1 }, 'vacuum trap full'],
    [{ 'separator.levelHigh': 1 }, 'separator high-level switch on'],
    [{ 'valve.position': 0.62 }, 'facility valve told 50 %, stands at 62 %'],
    [{ 'supplyTank.vent.position': 1 }, 'bleed or vent of the supply tank told 0 %, stands at 100 %'],
    [{ 'branch.r5.isolated': 1 }, 'branch r5 valved off: not protected'],
  ] as const)('tells what is off normal: %o', ([change, words]) => {
    expect(lineUp(change)).toMatchObject({ offNormal: [words], unknown: [], asUsual: 13 });
  });

  it('tells a vacuum source that rests between cycles as usual, and a standby that runs alone as not', () => {
    expect(lineUp({ 'vacuum.command': 0, 'vacuum.running': 0 }).offNormal).toEqual([]);
    const alone = { 'vacuum.command': 0, 'vacuum.running': 0, 'vacuum.standby.running': 1 };
    expect(lineUp(alone).offNormal).toEqual(['standby vacuum source runs alone']);
  });

  it('says what is not known, and counts it as usual in no case', () => {
    expect(lineUp({ 'valve.position': Number.NaN, 'control.manual': Number.NaN })).toMatchObject({
      ...{ offNormal: [], unknown: ['hand, bypass or local', 'facility valve'], asUsual: 12 },
    });
  });

  it('says what no point tells', () => {
    expect(lineUp({}, ['vacuum.available', 'branch.r5.isolated'])).toMatchObject({
      ...{
        notMeasured: ['standby vacuum source available', 'which of these branches are valved off: r5'],
        asUsual: 12,
      },
    });
  });

  it('names every point that it looks at once', () => {
    expect([...lineUpPoints(['r5'])].sort()).toEqual(Object.keys(usual).sort());
  });
});
