import { judgeAbove } from '../above';
import { freeAirText, joined } from '../details/quantity-text';
import type { UnitEntry } from '../entry';
import { guard, recall, usable, type UnitContext } from '../judge-context';
import { beyondUsualM3, knowsWaterOfTanks, usualTransferM3 } from '../plant-signs/water-of-tanks';
import { runningMean } from '../running-mean';
import { Verdict } from '../verdict';

const cell = { excess: 0 } as const;

/** A source that starts and stops carries its gas in bursts: the mean of so long is judged, ms. Own rule. */
const meanMs = 5 * 60_000;
/** `guard` is two standard uncertainties: three of them. */
const threeOfTwo = 1.5;

/**
 * Slow in-leak: gas load above all that is accounted for – baseline, what the last fill still gives off, open permits – by three
 * times its standard uncertainty, and by `limit` at least, free m³/s. Never off: after a fill its budget moves.
 */
export const air2: UnitEntry = {
  id: 'AIR-2',
  title: 'Air leaks in slowly',
  cause: 'A fitting, seal, hose or check valve that is no longer tight.',
  consequence: 'The vacuum reserve shrinks, and oxygen gets into the water: corrosion and slime.',
  action: {
    a: 'Find it by isolating one branch after the other, its servers powered off first, while you watch the gas load; keep the vacuum source running.',
    b: 'Find it by isolating one branch after the other, its servers powered off first, over whole tank cycles while you watch the gas load; keep the vacuum source running.',
    c: 'Find it by isolating one branch after the other, its servers powered off first, while you watch the gas load; keep the vacuum source running.',
  },
  confirm:
    'Compare the exhaust meter, the pressure rise while the vacuum source rests, and the top-up of the week. Air that the water gives off after a fill decays by itself.',
  timeToRespondS: 4 * 3600,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 2 / 60_000, deadband: 0.5 / 60_000, onDelayMs: 30 * 60_000, offDelayMs: 10 * 60_000 },
  unitOfMeasure: 'm3/s',
  basis: 'Three standard uncertainties; a tight loop of this size leaks 0.2 to 1 free L/min (from memory).',
  feeds: ['vacuum.exhaustFlow', 'vacuum.bleedFlow', 'vacuum.speed', 'vacuum.running', 'separator.pressure'],
  offInModes: [],
  offWhenInferred: false,
  applies: (_unit, slots) => slots.gasLoad >= 0 && slots.gasAllowance >= 0,
  judge(context, limits, active, finding) {
    const { slots, state } = context;
    const allowance = usable(state, slots.gasAllowance);
    const excess = runningMean(context, cell.excess, usable(state, slots.gasLoad) - allowance, meanMs);
    const margin = Math.max(limits.limit, threeOfTwo * guard(state, slots.gasLoad));
    // What is not known now neither raises nor clears, whatever the mean was.
    const known = !Number.isNaN(usable(state, slots.gasLoad) - allowance);
    finding.value = known ? allowance + excess : Number.NaN;
    finding.limit = allowance + margin;
    finding.verdict = changesOverOften(context)
      ? Verdict.hold
      : judgeAbove(finding.value, finding.limit, limits.deadband, active);
  },
  detail(context) {
    const excess = recall(context, cell.excess);
    if (Number.isNaN(excess)) return null;
    return joined(`${freeAirText(excess)} more than is accounted for.`, whereFrom(context));
  },
};

/** A fifth less water in a transfer is a quarter more gas by change-overs, as much as their gas is known to. Own rule. */
const lessInTransfer = 0.2;

/**
 * Tanks that hold too little, or too much, change over more often, and each time the gas of an emptied tank goes out: more than flow ×
 * pressure accounts for. That is water to look for, TANK-3 or TANK-2, and no air.
 */
const changesOverOften = (context: UnitContext): boolean =>
  knowsWaterOfTanks(context.unit, context.slots) &&
  Math.abs(beyondUsualM3(context)) > lessInTransfer * usualTransferM3(context);

function whereFrom({ permits, unitIndex }: UnitContext): string | null {
  return permits.count[unitIndex] === 0 ? null : 'What open permits expect is taken off already.';
}
