import type { ClockKind } from '../sample/intake-context';
import type { CompiledSite } from '../site/compiled-site';
import { copyColumns } from './copy-columns';
import { createPipelineState, type PipelineState } from './pipeline-state';
import { writeAllHand } from './hand/write-hand';
import { mapSites, type SiteMaps } from './site-maps';
import { takeOverGuided } from './guided/take-over-guided';
import { takeOverAir } from './take-over-air';
import { takeOverAlarms, takeOverAlerts } from './take-over-alarms';
import { takeOverOpenPermits, takeOverPermits } from './take-over-permits';
import { takeOverRules } from './take-over-rules';
import { takeOverSlots } from './take-over-slots';
import { takeOverTightness } from './take-over-tightness';

type TakeOver = (before: PipelineState, now: PipelineState, maps: SiteMaps, nowMs: number) => void;

const columns =
  (memory: (state: PipelineState) => object, by: keyof SiteMaps): TakeOver =>
  (before, now, maps) =>
    copyColumns(memory(before), memory(now), maps[by]);

/** Follows from the site alone, is drained before the change of site, or is found again with the next step. */
const fresh: TakeOver = () => undefined;

/** How each part of the state goes over to the state of another site. Whoever adds a part says it here. */
const parts: { readonly [Part in keyof PipelineState]: TakeOver } = {
  site: fresh,
  index: fresh,
  unitSlots: fresh,
  limits: fresh,
  gatewayOfSlot: fresh,
  applies: fresh,
  unitPlaces: fresh,
  history: fresh,
  hallFirstOut: fresh,
  transitions: fresh,
  state: takeOverSlots,
  delays: columns(({ delays }) => delays, 'alarms'),
  memory: takeOverRules,
  plant: columns(({ plant }) => plant, 'units'),
  book: takeOverAlarms,
  alerts: takeOverAlerts,
  alertChanges: (before, now) => void now.alertChanges.unshift(...before.alertChanges.splice(0)),
  permits: takeOverPermits,
  openPermits: takeOverOpenPermits,
  permitChanges: (before, now) => void now.permitChanges.unshift(...before.permitChanges.splice(0)),
  tightness: takeOverTightness,
  guided: (before, now, _maps, nowMs) => takeOverGuided(before, now, nowMs),
  hand: (before, now, _maps, nowMs) => {
    for (const record of before.hand.all()) now.hand.add(record);
    writeAllHand(now, nowMs);
  },
  left: (before, now) => void now.left.unshift(...before.left.splice(0)),
  modes: columns(({ modes }) => ({ modes }), 'units'),
  modeSinceMs: columns(({ modeSinceMs }) => ({ modeSinceMs }), 'units'),
  air: takeOverAir,
  supplyRise: columns(({ supplyRise }) => supplyRise, 'units'),
  facilityRise: columns(({ facilityRise }) => facilityRise, 'units'),
  steppedMs: columns(({ steppedMs }) => ({ steppedMs }), 'units'),
  hour: columns(({ hour }) => hour, 'units'),
  hallMeans: columns(({ hallMeans }) => hallMeans, 'halls'),
  unitMeans: columns(({ unitMeans }) => unitMeans, 'units'),
  follow: columns(({ follow }) => follow, 'units'),
  gatewayHeardMs: columns(({ gatewayHeardMs }) => ({ gatewayHeardMs }), 'gateways'),
  gatewayGoneMs: columns(({ gatewayGoneMs }) => ({ gatewayGoneMs }), 'gateways'),
  intake: (before, now, maps) => {
    copyColumns({ ownValue: before.intake.ownValue }, { ownValue: now.intake.ownValue }, maps.slots);
    const status = ({ intake }: PipelineState) => ({ gatewayStatus: intake.gatewayStatus });
    copyColumns(status(before), status(now), maps.gateways);
  },
  system: (before, now) => void (now.system = before.system),
  groupSteppedMs: (before, now) => void (now.groupSteppedMs = before.groupSteppedMs),
  stoodFromMs: (before, now) => void (now.stoodFromMs = before.stoodFromMs),
  resumedMs: (before, now) => void (now.resumedMs = before.resumedMs),
  reachedMs: (before, now) => void (now.reachedMs = before.reachedMs),
  // The grace of the start begins anew only where there is something that could not have been heard of yet.
  startedMs: (before, now, maps, nowMs) => void (now.startedMs = anythingNew(now, maps) ? nowMs : before.startedMs),
};

/**
 * The state for another site that goes on where `before` is: what is the same in both keeps its values, delays, alarms
 * and memories; alarms, alerts and permits of what is gone end by configuration, told with the next `advance`.
 * Rows of history that `before` holds are to be drained first. `before` is not to be used any more.
 */
export function takeOver(before: PipelineState, site: CompiledSite, clock: ClockKind, nowMs: number): TakenOver {
  const now = createPipelineState(site, clock);
  const maps = mapSites(before, now);
  for (const part of Object.values(parts)) part(before, now, maps, nowMs);
  return { state: now, maps };
}

export interface TakenOver {
  readonly state: PipelineState;
  readonly maps: SiteMaps;
}

function anythingNew({ site }: PipelineState, { slots, gateways }: SiteMaps): boolean {
  return gateways.before.includes(-1) || slots.before.some((was, slot) => was < 0 && site.slots.measured[slot] === 1);
}
