import { describe, expect, it } from 'vitest';
import { flows } from '../../../../../../backend/src/evaluation/pipeline/tightness/plant-at-rest';
import { unitPlan } from '../../../../../../backend/src/evaluation/derive/unit-plan';
import { createPipelineState } from '../../../../../../backend/src/evaluation/pipeline/pipeline-state';
import { buildSite } from '../../../../../helpers/compiled-site-builder';

/** Whether water flows as a unit with a standby pump, or without one, says by these points alone. */
function flowsBy(values: Readonly<Record<string, number>>, also = ['pump.standby.running']): boolean | null {
  const built = buildSite({ also });
  const pipeline = createPipelineState(built.site, 'wall');
  for (const [point, value] of Object.entries(values)) {
    const slot = built.slot(point);
    pipeline.state.value[slot] = value;
    pipeline.state.reasons[slot] = 0;
  }
  return flows(pipeline, unitPlan(built.site, 0));
}

describe('water flows', () => {
  it('where either pump runs, whatever is known of the meter', () => {
    expect(flowsBy({ 'pump.running': 0, 'pump.standby.running': 1 })).toBe(true);
    expect(flowsBy({ 'pump.running': 1, 'pump.standby.running': 0 })).toBe(true);
    expect(flowsBy({ 'loop.flow': 0, 'pump.running': 0, 'pump.standby.running': 1 })).toBe(true);
  });

  it('not where the meter shows its zero, or both pumps stand', () => {
    expect(flowsBy({ 'loop.flow': 0 })).toBe(false);
    expect(flowsBy({ 'pump.running': 0, 'pump.standby.running': 0 })).toBe(false);
    expect(flowsBy({ 'pump.running': 0 }, [])).toBe(false);
  });

  it('perhaps, where one pump stands, nothing is heard of the other and the meter is bad', () => {
    expect(flowsBy({ 'pump.running': 0 })).toBeNull();
    expect(flowsBy({ 'pump.standby.running': 0 })).toBeNull();
    expect(flowsBy({})).toBeNull();
  });
});
