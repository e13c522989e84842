import type { UnitEntry } from '../entry';
import { usable, type UnitContext } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { chipsLoaded } from '../plant-signs/chips-loaded';
import { followTransfers, transfersToLearn } from '../plant-signs/transfer-memory';
import { Verdict } from '../verdict';

/** A change-over that comes before this share of the usual water has gone is too early. */
const tooOften = 0.5;
/** Where the flow dies away no more water goes: then so many times the usual time tell that the change-over failed. */
const failedTimes = 2;

/**
 * Alternating tanks do not change over as they use to: late or not at all (`limit` times the usual water has gone), or too often.
 * The usual transfer is learnt from the tanks themselves.
 */
export const xfer1: UnitEntry = {
  id: 'XFER-1',
  title: 'Alternating tanks change over late, or too often',
  cause:
    'A change-over valve stuck, a level switch lost, the vacuum too weak to fill in time, or a check valve leaking back.',
  consequence: 'Late: the discharging tank runs empty and the flow is gone. Too often: gas load, valve slams and wear.',
  action: {
    a: 'Confirm that the tanks change over, by hand if they do not; keep the vacuum source running. Then look at valves and level switches.',
    b: 'Change over by hand if the discharging tank is nearly empty; keep the vacuum source running. Then look at change-over valves, level switches and check valves.',
    c: 'Confirm that the tanks change over, by hand if they do not; keep the vacuum source running. Then look at valves and level switches.',
  },
  confirm: 'Compare the levels of the tanks, and listen for the valves at the next change-over.',
  timeToRespondS: 10 * 60,
  severity: 'major',
  worse: {
    severity: 'severe',
    timeToRespondS: 5 * 60,
    when: 'the change-over is late: flow is lost when the tank is empty',
  },
  latching: false,
  defaults: { limit: 1.25, deadband: 0, onDelayMs: 2000, offDelayMs: 5000 },
  unitOfMeasure: 'm3',
  basis: 'Water that goes between two change-overs is the tank’s own; a quarter more is a proposal of this project.',
  feeds: ['tank.<id>.filling', 'loop.flow'],
  offInModes: stoppedModes,
  offWhenInferred: true,
  applies: (unit, slots) => unit.shape === 'b' && slots.tankFilling.some((slot) => slot >= 0),
  judge(context, limits, _active, finding) {
    const { nowMs, plant, slots, state, unitIndex } = context;
    const { transfers } = plant;
    const now = {
      filling: fillingNow(context),
      flowM3PerS: usable(state, slots.loopFlow),
      heldM3: usable(state, slots.waterVolume),
    };
    followTransfers(transfers, unitIndex, now, nowMs);
    const usual = transfers.usualWater[unitIndex] as number;
    if ((transfers.seen[unitIndex] as number) < transfersToLearn) return;
    const gone = transfers.waterSince[unitIndex] as number;
    const last = transfers.lastWater[unitIndex] as number;
    const late = gone > limits.limit * usual || failed(context);
    finding.worse = late;
    finding.value = late ? gone : last;
    finding.limit = late ? limits.limit * usual : tooOften * usual;
    if (late || last < finding.limit) finding.verdict = Verdict.yes;
    else finding.verdict = Number.isNaN(gone + last) ? Verdict.hold : Verdict.no;
  },
  detail({ plant: { transfers }, unitIndex }) {
    const usual = transfers.usualWater[unitIndex] as number;
    const litres = (m3: number): string => `${(1000 * m3).toFixed(0)} L`;
    if (Number.isNaN(usual)) return null;
    return `Since the last change-over ${litres(transfers.waterSince[unitIndex] as number)} have gone, at the one before ${litres(transfers.lastWater[unitIndex] as number)}; usual are ${litres(usual)}.`;
  },
};

/** Bits of the tanks that fill; −1 where one of them is not known. */
function fillingNow({ slots, state }: UnitContext): number {
  let bits = 0;
  for (let tank = 0; tank < slots.tankFilling.length; tank += 1) {
    const slot = slots.tankFilling[tank] as number;
    if (slot < 0) continue;
    const filling = usable(state, slot);
    if (Number.isNaN(filling)) return -1;
    if (filling >= 0.5) bits |= 1 << tank;
  }
  return bits;
}

function failed(context: UnitContext): boolean {
  const { transfers } = context.plant;
  const waited = transfers.timeSince[context.unitIndex] as number;
  return chipsLoaded(context) === true && waited > failedTimes * (transfers.usualTime[context.unitIndex] as number);
}
