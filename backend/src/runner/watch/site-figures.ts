import type { CountingPipeline } from '../../evaluation/pipeline/create-pipeline';
import { reasonBit } from '../../evaluation/slots/quality-reasons';
import type { SiteFigures } from '../../ports/own-figures';

const silent = reasonBit.stale | reasonBit.notReceived;
const seen: readonly string[] = ['acknowledged', 'latchedAcknowledged'];

/** Figures of the plant that is watched; looked up when asked. */
export function siteFigures(pipeline: CountingPipeline): SiteFigures {
  const { units } = pipeline.site;
  const standing = pipeline.standing();
  return {
    units: units.length,
    unitsSilent: units.filter(({ holder }) => isSilent(pipeline, holder)).length,
    alarms: [1, 2, 3].flatMap((priority) =>
      [true, false].map((acknowledged) => ({
        priority,
        acknowledged,
        count: standing.filter((one) => one.priority === priority && seen.includes(one.state) === acknowledged).length,
      })),
    ),
    skippedS: pipeline.skippedMs() / 1000,
  };
}

/** One fresh point is enough; a unit without any measured point is none that could be silent. */
function isSilent({ site, state }: CountingPipeline, holderIndex: number): boolean {
  const holder = site.holders[holderIndex];
  if (holder === undefined) return false;
  let measured = false;
  for (let slot = holder.firstSlot; slot < holder.firstSlot + holder.slotCount; slot += 1) {
    if (site.slots.measured[slot] !== 1) continue;
    if (((state.reasons[slot] as number) & silent) === 0) return false;
    measured = true;
  }
  return measured;
}
