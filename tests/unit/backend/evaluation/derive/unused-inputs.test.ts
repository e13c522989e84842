import { describe, expect, it } from 'vitest';
import { derivedPointsOfUnit } from '../../../../../backend/src/evaluation/derive/derived-points';
import { explainPoint } from '../../../../../backend/src/evaluation/derive/explain-point';
import { unitPlan } from '../../../../../backend/src/evaluation/derive/unit-plan';
import { unusedInputs } from '../../../../../backend/src/evaluation/derive/unused-inputs';
import type { SiteOptions } from '../../../../helpers/compiled-site-builder';
import { buildRichUnitM } from '../../../../helpers/rich-unit-m';

function inputsOf(point: string, options: SiteOptions = {}): readonly string[] {
  const { site, state, slot } = buildRichUnitM(options);
  return explainPoint(site, state, 0, slot(point), false).inputSlots.map((one) => site.slots.pointId[one] ?? '');
}
const without = (...ids: readonly string[]): SiteOptions => ({
  without: ['supply.pressure', 'return.pressure', ...ids],
});

describe('an opened value', () => {
  it('names what its unit rests on, and nothing of a way that another one goes', () => {
    expect(inputsOf('gasAllowance')).toEqual(['topUp.volume']);
    expect(inputsOf('gasLoad')).toEqual(['vacuum.exhaustFlow']);
    expect(inputsOf('npshAvailable')).toEqual(['pump.inlet.pressure', 'return.temperature']);
    expect(inputsOf('supplyTankRate')).toEqual(['supplyTank.level']);
    expect(inputsOf('ph')).toEqual(['water.ph']);
    expect(inputsOf('node.floorSupply.pressure')).toEqual(['supplyTank.pressure', 'supply.temperature', 'loop.flow']);
    expect(inputsOf('node.floorReturn.pressureStopped')).toEqual(['separator.pressure', 'return.temperature']);
  });

  it('names them where the unit goes that way: alternating tanks, no meter, no sensor at the inlet, no level', () => {
    expect(inputsOf('gasAllowance', { shape: 'b' })).toEqual(
      expect.arrayContaining(['loop.flow', 'supplyTank.pressure', 'separator.pressure']),
    );
    expect(inputsOf('gasLoad', without('vacuum.exhaustFlow'))).toEqual(
      expect.arrayContaining(['vacuum.speed', 'vacuum.running', 'separator.pressure', 'return.temperature']),
    );
    expect(inputsOf('npshAvailable', without('pump.inlet.pressure'))).toContain('loop.flow');
    expect(inputsOf('supplyTankRate', without('supplyTank.level'))).toEqual(['transfer.flow', 'loop.flow']);
  });

  it('leaves out only what its row lists', () => {
    const { site } = buildRichUnitM();
    const plan = unitPlan(site, 0);
    for (const [pattern, unused] of Object.entries(unusedInputs)) {
      const row = derivedPointsOfUnit.find(({ id }) => id === pattern);
      const listed = row?.inputs ?? [];
      for (const id of [pattern, ...plan.unit.nodes.map((node) => pattern.replace('<id>', node.id))])
        for (const one of unused(plan, id)) expect(listed, `${id}: ${one}`).toContain(one);
    }
  });
});
