import { learnSlowMeans } from '../alarm-rules/slow-means';
import { deriveHall } from '../derive/derive-hall';
import { judgeStale } from '../quality/judge-stale';
import { followClock } from './follow-clock';
import { groupStep } from './group-step';
import { judgeGateways } from './judge-gateways';
import { judgeInstruments } from './judge-instruments';
import { judgeSystem } from './judge-system';
import type { PipelineState } from './pipeline-state';
import { endShelvings } from './set-aside/end-shelvings';
import { writeDerivedRow } from './write-derived-row';

/** What spans units, once a second, before the units of that second: shelvings that are over, the program itself, gateways, then halls, then loops. */
export function hallStep(pipeline: PipelineState, nowMs: number): void {
  const { site, state } = pipeline;
  followClock(pipeline, nowMs);
  endShelvings(pipeline, nowMs);
  judgeSystem(pipeline, nowMs);
  judgeGateways(pipeline, nowMs);
  for (let hall = 0; hall < site.halls.length; hall += 1) {
    const holder = site.halls[hall]?.holder ?? -1;
    judgeStale(site, state, holder, nowMs);
    deriveHall(site, state, hall, nowMs);
    writeDerivedRow(pipeline, holder, nowMs);
    judgeInstruments(pipeline, holder, nowMs);
    learnSlowMeans(pipeline, hall, (nowMs - pipeline.groupSteppedMs) / 1000);
  }
  groupStep(pipeline, nowMs);
}
