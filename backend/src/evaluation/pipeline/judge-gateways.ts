import { catalogue } from '../alarm-rules/catalogue/catalogue';
import { clearFinding, createFinding } from '../alarm-rules/finding';
import { priorityOf } from '../alarm-rules/priority';
import { Verdict } from '../alarm-rules/verdict';
import { staleAfterMs } from '../quality/stale';
import { GatewayStatus } from '../sample/intake-context';
import type { CompiledGateway, CompiledSite } from '../site/compiled-site';
import { awaitedAnew } from './await-anew';
import { instrumentParent } from './fold-instruments';
import { startGraceMs } from './judge-instruments';
import type { PipelineState } from './pipeline-state';
import { raiseAndClear, unfolded } from './raise-and-clear';

const com1 = catalogue['COM-1'];
const priority = priorityOf(com1.severity, com1.timeToRespondS);
const finding = createFinding();

/** COM-1 for every gateway, once a second. */
export function judgeGateways(pipeline: PipelineState, nowMs: number): void {
  pipeline.site.gateways.forEach((gateway, place) => {
    clearFinding(finding);
    finding.verdict = verdictOf(pipeline, gateway, place, nowMs);
    finding.where = gateway.id;
    const judged = {
      alarm: pipeline.index.ofGateway(place),
      onDelayMs: com1.defaults.onDelayMs,
      offDelayMs: com1.defaults.offDelayMs,
      unitOfMeasure: null,
      priority,
      enabled: true,
      detail: null,
    };
    if (raiseAndClear(pipeline, judged, finding, unfolded, nowMs)) refoldGateway(pipeline, place);
  });
}

/**
 * Where this program itself stood still, each gateway is given its time again before it is called silent. A gateway that
 * was never heard is not judged until the start grace is over, whatever a status kept by the broker says of it: that may
 * tell of the time in which this program was not there.
 */
function verdictOf(pipeline: PipelineState, gateway: CompiledGateway, place: number, nowMs: number): Verdict {
  if (gateway.slots.length === 0) return Verdict.no;
  const heard = pipeline.gatewayHeardMs[place] as number;
  const gone = saysGone(pipeline, place, heard, nowMs);
  const limit = silentAfterMs(pipeline.site, gateway);
  if (Number.isNaN(heard)) {
    const grace = Math.max(startGraceMs, limit);
    const awaited = nowMs - pipeline.startedMs < grace || awaitedAnew(pipeline, heard, grace, nowMs);
    return awaited ? Verdict.hold : Verdict.yes;
  }
  if (gone) return Verdict.yes;
  if (nowMs - heard <= limit) return Verdict.no;
  return awaitedAnew(pipeline, heard, limit, nowMs) ? Verdict.hold : Verdict.yes;
}

/** A gateway that is said to be gone and is heard nevertheless is there: its samples count for more. */
function saysGone(pipeline: PipelineState, place: number, heardMs: number, nowMs: number): boolean {
  const { gatewayGoneMs, intake } = pipeline;
  if (intake.gatewayStatus[place] !== GatewayStatus.gone) {
    gatewayGoneMs[place] = Number.NaN;
    return false;
  }
  if (Number.isNaN(gatewayGoneMs[place])) gatewayGoneMs[place] = nowMs;
  return !(heardMs > (gatewayGoneMs[place] as number));
}

const limits = new WeakMap<CompiledGateway, number>();

/** Three periods of the gateway's fastest point, at least 5 s: as soon as that point is stale. */
function silentAfterMs(site: CompiledSite, gateway: CompiledGateway): number {
  const known = limits.get(gateway);
  if (known !== undefined) return known;
  let limit = Number.POSITIVE_INFINITY;
  for (const slot of gateway.slots) limit = Math.min(limit, staleAfterMs(site.slots, slot));
  limits.set(gateway, limit);
  return limit;
}

/** Standing INS-1 of the gateway's points fold under it, or come out again. */
export function refoldGateway(pipeline: PipelineState, gateway: number): void {
  for (const alarm of [...pipeline.book.indices()]) {
    const point = pipeline.index.points[pipeline.index.pointOf(alarm)];
    if (point === undefined || pipeline.gatewayOfSlot[point.slot] !== gateway) continue;
    pipeline.book.fold(alarm, instrumentParent(pipeline, point, alarm));
  }
}
