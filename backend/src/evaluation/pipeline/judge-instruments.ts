import { catalogue } from '../alarm-rules/catalogue/catalogue';
import { restDelay } from '../alarm-rules/delays';
import type { FeedingPoint } from '../alarm-rules/feeding-points';
import { clearFinding, createFinding } from '../alarm-rules/finding';
import { judgeNoData } from '../alarm-rules/no-data';
import { Verdict } from '../alarm-rules/verdict';
import { staleAfterMs } from '../quality/stale';
import { badBits, reasonBit } from '../slots/quality-reasons';
import { awaitedAnew } from './await-anew';
import { instrumentParent } from './fold-instruments';
import type { PipelineState } from './pipeline-state';
import { raiseAndClear } from './raise-and-clear';

const ins1 = catalogue['INS-1'];
/** A point that was never heard is not judged so long after the start, or three of its periods if longer. */
export const startGraceMs = 60_000;

const finding = createFinding();

/** INS-1 for the feeding points of one holder. */
export function judgeInstruments(pipeline: PipelineState, holder: number, nowMs: number): void {
  const { index } = pipeline;
  const { reasons } = pipeline.state;
  const { delays } = pipeline;
  const { active } = delays;
  const { firstPoint, slotOfPoint } = index;
  const end = firstPoint[holder + 1] as number;
  let place = firstPoint[holder] as number;
  let alarm = index.ofPoint(place);
  for (; place < end; place += 1, alarm += 1) {
    const bits = reasons[slotOfPoint[place] as number] as number;
    if ((bits & badBits) !== 0 || active[alarm] === 1) judgePoint(pipeline, place, alarm, bits, nowMs);
    else restDelay(delays, alarm);
  }
}

/** Apart from the loop above: what its closures need is set up on every call. */
function judgePoint(pipeline: PipelineState, place: number, alarm: number, reasons: number, nowMs: number): void {
  const { index, site } = pipeline;
  const point = index.points[place] as FeedingPoint;
  clearFinding(finding);
  finding.verdict = verdictOf(pipeline, point, reasons, nowMs);
  finding.where = site.slots.pointId[point.slot] ?? null;
  raiseAndClear(
    pipeline,
    {
      alarm,
      onDelayMs: ins1.defaults.onDelayMs,
      offDelayMs: ins1.defaults.offDelayMs,
      unitOfMeasure: null,
      priority: point.priority,
      enabled: true,
      detail: null,
    },
    finding,
    () => instrumentParent(pipeline, point, alarm),
    nowMs,
  );
}

/**
 * Silence of one point is told from silence of its gateway: a stale point is lost only where the gateway has spoken
 * since, without it. While the gateway itself is silent COM-1 speaks, and this one stays as it was.
 */
function verdictOf(pipeline: PipelineState, point: FeedingPoint, reasons: number, nowMs: number): Verdict {
  const { site, state, gatewayHeardMs, gatewayOfSlot, startedMs } = pipeline;
  const graceMs = Math.max(startGraceMs, 3 * (site.slots.periodMs[point.slot] as number));
  const verdict = judgeNoData(reasons, nowMs - startedMs < graceMs);
  if (verdict !== Verdict.yes || (reasons & silentBits) === 0) return verdict;
  const accepted = state.acceptedMs[point.slot] as number;
  const limit = staleAfterMs(site.slots, point.slot);
  if (awaitedAnew(pipeline, accepted, Number.isNaN(accepted) ? graceMs : limit, nowMs)) return Verdict.hold;
  const gateway = gatewayOfSlot[point.slot] as number;
  if (gateway < 0) return verdict;
  if (pipeline.delays.active[pipeline.index.ofGateway(gateway)] === 1) return Verdict.hold;
  const heard = gatewayHeardMs[gateway] as number;
  if ((reasons & reasonBit.notReceived) !== 0) return Number.isNaN(heard) ? Verdict.hold : verdict;
  return heard >= accepted + limit ? verdict : Verdict.hold;
}

const silentBits = reasonBit.stale | reasonBit.notReceived;
