import { unitPlan } from '../derive/unit-plan';
import type { PipelineState } from './pipeline-state';
import type { SiteMaps } from './site-maps';
import { ended } from './tightness/so-far';
import { gasRoom } from './tightness/unit-gas';
import type { TightnessRecord } from './tightness-record';

/**
 * Records go over as they are. A test goes on where its unit still has the same sensors and the same room for gas; else it ends,
 * as what it measured before and after would not be the same quantity.
 */
export function takeOverTightness(before: PipelineState, now: PipelineState, maps: SiteMaps, nowMs: number): void {
  for (const [id, record] of before.tightness.records) now.tightness.records.set(id, record);
  now.tightness.changes.push(...before.tightness.changes.splice(0));
  for (const [unit, run] of before.tightness.running) {
    if (measuresTheSame(before, now, maps, run.record)) {
      now.tightness.running.set(unit, run);
      continue;
    }
    const test = ended(before, run, 'configuration', null, nowMs);
    now.tightness.records.set(test.id, test);
    now.tightness.changes.push({ what: 'ended', test, atMs: nowMs, actor: null, station: null, comment: null });
  }
}

const read = ['separator.pressure', 'return.temperature', 'separator.level'] as const;

function measuresTheSame(
  before: PipelineState,
  now: PipelineState,
  { units, slots }: SiteMaps,
  { unit, dry, gasVolumeStatedM3 }: TightnessRecord,
): boolean {
  const unitNow = now.site.units.findIndex(({ id }) => id === unit);
  const unitBefore = units.before[unitNow] ?? -1;
  if (unitNow < 0 || unitBefore < 0) return false;
  const planNow = unitPlan(now.site, unitNow);
  const planBefore = unitPlan(before.site, unitBefore);
  const sameSlots = read.every((id) => {
    const slot = planNow.slot[id];
    return slot < 0 ? planBefore.slot[id] < 0 : slots.before[slot] === planBefore.slot[id];
  });
  // The same level gives the same room, whatever level that is.
  const roomNow = gasRoom(planNow.unit, planNow, dry, gasVolumeStatedM3, 0);
  const roomBefore = gasRoom(planBefore.unit, planBefore, dry, gasVolumeStatedM3, 0);
  return sameSlots && roomNow?.volumeM3 === roomBefore?.volumeM3 && roomNow?.areaM2 === roomBefore?.areaM2;
}
