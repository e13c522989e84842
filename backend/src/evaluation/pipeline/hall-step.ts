import { usable } from '../alarm-rules/judge-context';
import { deriveHall } from '../derive/derive-hall';
import { judgeStale } from '../quality/judge-stale';
import { groupStep } from './group-step';
import { judgeGateways } from './judge-gateways';
import { judgeInstruments } from './judge-instruments';
import type { PipelineState } from './pipeline-state';
import { writeDerivedRow } from './write-derived-row';

/** What spans units, once a second, before the units of that second: gateways, then halls, then loops. */
export function hallStep(pipeline: PipelineState, nowMs: number): void {
  const { site, state } = pipeline;
  judgeGateways(pipeline, nowMs);
  for (let hall = 0; hall < site.halls.length; hall += 1) {
    const holder = site.halls[hall]?.holder ?? -1;
    judgeStale(site, state, holder, nowMs);
    deriveHall(site, state, hall, nowMs);
    writeDerivedRow(pipeline, holder, nowMs);
    judgeInstruments(pipeline, holder, nowMs);
    learnAmbient(pipeline, hall, nowMs);
  }
  groupStep(pipeline, nowMs);
}

/** Weather moves within hours: the mean that falling weather is told by follows with this time constant, s. Own rule. */
const ambientMemoryS = 6 * 3600;

function learnAmbient({ ambientMean, groupSteppedMs, site, state }: PipelineState, hall: number, nowMs: number): void {
  const now = usable(state, site.halls[hall]?.slot.ambientPressure ?? -1);
  if (Number.isNaN(now)) return;
  const before = ambientMean[hall] as number;
  const share = Math.min(1, (nowMs - groupSteppedMs) / 1000 / ambientMemoryS);
  ambientMean[hall] = Number.isNaN(before) || Number.isNaN(share) ? now : before + (now - before) * share;
}
