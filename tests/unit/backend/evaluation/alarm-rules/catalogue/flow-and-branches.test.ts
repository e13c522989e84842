import { describe, expect, it } from 'vitest';
import { unitEntryPlace } from '../../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { reasonBit } from '../../../../../../backend/src/evaluation/slots/quality-reasons';
import type { CompiledUnit } from '../../../../../../backend/src/evaluation/site/compiled-site';
import { RuleBench } from '../rule-bench';

describe('FLOW-1', () => {
  const bench = (): RuleBench =>
    new RuleBench({ also: ['flowShare'], values: { flowShare: 1 } }).mode('running').run(30);

  it('is raised 15 s after the flow is below 85 % of what is expected, and clears above its deadband', () => {
    const choked = bench().set('flowShare', 0.84);
    expect(choked.secondsUntil('FLOW-1', 30)).toBe(16);
    expect(choked.alarm('FLOW-1')?.priority).toBe(2);
    expect(choked.set('flowShare', 0.87).run(120).active('FLOW-1')).toBe(true);
    expect(choked.bad('flowShare').run(120).active('FLOW-1')).toBe(true);
    expect(choked.set('flowShare', 0.89).run(40).active('FLOW-1')).toBe(false);
  });

  it('is not raised at the limit, nor in a stopped or filling loop', () => {
    expect(bench().set('flowShare', 0.85).run(60).active('FLOW-1')).toBe(false);
    for (const mode of ['filling', 'standby', 'off'] as const)
      expect(bench().mode(mode).set('flowShare', 0.5).run(60).active('FLOW-1')).toBe(false);
  });
});

describe('FLOW-3', () => {
  const shares = ['branch.r1.flowShare', 'branch.r2.flowShare'];
  const bench = (): RuleBench =>
    new RuleBench({ also: shares, values: { 'branch.r1.flowShare': 1, 'branch.r2.flowShare': 1 } })
      .mode('running')
      .run(30);

  it('is raised for the branch that is low, a minute after, under its own name', () => {
    const blocked = bench().set('branch.r2.flowShare', 0.58);
    expect(blocked.secondsUntil('FLOW-3', 90)).toBe(61);
    expect(blocked.alarm('FLOW-3')).toMatchObject({ alarm: 'm1:FLOW-3:r2', where: 'Rack r2', priority: 3 });
    expect(blocked.detail('FLOW-3')).toMatch(/42 % below its share/);
  });

  it('does not speak of a branch that is isolated', () => {
    const shut = bench();
    const slot = shut.pipeline.unitSlots[0]?.branchFlowShare[1] ?? -1;
    shut.pipeline.state.reasons[slot] = reasonBit.notApplicable;
    expect(shut.run(120).active('FLOW-3')).toBe(false);
  });

  it('folds under AIR-1 only where AIR-1 names that branch', () => {
    const cut = bench().set('branch.r1.flowShare', 0.5).set('branch.r2.flowShare', 0.5).run(90);
    const { air, delays, index, book } = cut.pipeline;
    air.namedBranch[0] = 1;
    const alarm = index.ofUnit(0) + unitEntryPlace['AIR-1'];
    delays.active[alarm] = 1;
    const identity = index.identity(alarm);
    const facts = { priority: 2, sinceMs: cut.nowMs, value: 1, limit: 1, unitOfMeasure: null, where: null } as const;
    book.raise(alarm, 'conditionTrue', identity, { ...facts, foldedUnder: null }, cut.nowMs);
    // Anything that comes or goes has the unit folded anew.
    cut.set('lowerWallMargin', 1000).run(20);
    const folded = book.standing().filter(({ entry }) => entry === 'FLOW-3');
    expect(folded.map(({ where, foldedUnder }) => [where, foldedUnder])).toEqual([
      ['Rack r1', null],
      ['Rack r2', 'm1:AIR-1'],
    ]);
  });
});

describe('ISOL-1', () => {
  const isolated = (unit: CompiledUnit, slotOf: (point: string) => number): CompiledUnit => ({
    ...unit,
    branches: unit.branches.map((branch) => ({
      ...branch,
      slot: { ...branch.slot, isolated: slotOf(`branch.${branch.id}.isolated`) },
    })),
  });
  const bench = (): RuleBench =>
    new RuleBench({
      also: ['branch.r1.isolated', 'branch.r2.isolated'],
      unit: isolated,
      values: {
        'branch.r1.isolated': 0,
        'branch.r2.isolated': 0,
        'branch.r2.power': 0,
        'branch.r2.return.temperature': 40,
      },
    }).run(30);

  it('is raised within ten seconds for a valved-off rack whose servers idle, whatever the mode', () => {
    const shut = bench().mode('off').set('branch.r2.isolated', 1).set('branch.r2.power', 4000);
    expect(shut.secondsUntil('ISOL-1', 10)).toBe(6);
    expect(shut.alarm('ISOL-1')).toMatchObject({ alarm: 'm1:ISOL-1:r2', where: 'Rack r2', priority: 3, value: 40 });
    shut.run(5, (second) => void shut.set('branch.r2.return.temperature', 40 + (second + 1) * 0.1));
    expect(shut.detail('ISOL-1')).toMatch(/^Isolated rack, not protected, 4[01] °C and warming \(4\.0 kW on/);
  });

  it('is raised by its warming alone, and clears when it is open again', () => {
    const shut = bench().set('branch.r2.isolated', 1).run(60);
    expect(shut.active('ISOL-1')).toBe(false);
    shut.run(60, (second) => void shut.set('branch.r2.return.temperature', 40 + second * 0.05));
    expect(shut.active('ISOL-1')).toBe(true);
    expect(shut.set('branch.r2.isolated', 0).run(40).active('ISOL-1')).toBe(false);
  });

  it('is an alert where neither heat nor temperature is known', () => {
    const blind = bench()
      .set('branch.r2.isolated', 1)
      .bad('branch.r2.power')
      .bad('branch.r2.return.temperature')
      .run(20);
    expect(blind.alarm('ISOL-1')).toBeUndefined();
    expect(blind.alert('ISOL-1')?.where).toBe('Rack r2');
  });

  it('sees a warming of 2 K an hour, and takes noise for none', () => {
    const noise = (second: number): number => [0.015, -0.02, 0.03, -0.01, 0, -0.03, 0.02][second % 7] as number;
    const shut = bench().set('branch.r2.isolated', 1);
    shut.run(3600, (second) => void shut.set('branch.r2.return.temperature', 40 + noise(second)));
    expect(shut.active('ISOL-1')).toBe(false);
    const warming = (second: number): void =>
      void shut.set('branch.r2.return.temperature', 40 + (2 * second) / 3600 + noise(second));
    shut.run(1200, warming);
    expect(shut.active('ISOL-1')).toBe(true);
    expect(shut.detail('ISOL-1')).toMatch(/41 °C and warming/);
    shut.run(2400, () => void shut.set('branch.r2.return.temperature', 40.7));
    expect(shut.active('ISOL-1')).toBe(false);
  });

  it('stands as the alarm that it is where heat and temperature are lost', () => {
    const shut = bench().set('branch.r2.isolated', 1).set('branch.r2.power', 4000).run(20);
    expect(shut.alarm('ISOL-1')?.active).toBe(true);
    shut.bad('branch.r2.power').bad('branch.r2.return.temperature').run(600);
    expect(shut.alarm('ISOL-1')?.active).toBe(true);
    expect(shut.alert('ISOL-1')).toBeUndefined();
  });

  it('stays as it was where the position of the valve is lost', () => {
    const shut = bench().set('branch.r2.isolated', 1).set('branch.r2.power', 4000).run(20);
    expect(shut.bad('branch.r2.isolated').run(600).active('ISOL-1')).toBe(true);
  });
});

describe('VENT-1', () => {
  const bench = (): RuleBench =>
    new RuleBench({
      also: ['supplyTank.vent.command', 'supplyTank.vent.position'],
      values: { 'supplyTank.vent.command': 0.2, 'supplyTank.vent.position': 0.2 },
    }).run(30);

  it('is raised 5 s after the bleed is not where it is told to be, and says which way', () => {
    const stuck = bench().set('supplyTank.vent.command', 1);
    expect(stuck.secondsUntil('VENT-1', 10)).toBe(6);
    expect(stuck.alarm('VENT-1')?.priority).toBe(2);
    expect(stuck.detail('VENT-1')).toBe('The vent is not opening: told 100 %, stands at 20 %.');
    expect(stuck.bad('supplyTank.vent.position').run(60).active('VENT-1')).toBe(true);
    expect(stuck.set('supplyTank.vent.position', 0.98).run(10).active('VENT-1')).toBe(false);
  });

  it('is told by a margin that is gone as well', () => {
    const stuck = bench().set('supplyTank.vent.command', 1).set('vacuumMargin', -3000);
    expect(stuck.secondsUntil('MARGIN-2', 10)).toBe(4);
    expect(stuck.detail('MARGIN-2')).toContain('The vent is not opening');
  });
});
