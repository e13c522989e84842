import type { PlantShape } from '../../site/compiled-site';
import { anyOf } from '../any-of';
import { judgeDiscrete } from '../discrete';
import { SetPoint, setPointCount } from '../plant-signs/set-point-memory';
import type { UnitEntry } from '../entry';
import { keep, recall, usable, type UnitContext } from '../judge-context';
import { sealWaterSign } from '../plant-signs/seal-water-sign';
import { placesToTell } from '../told-places';
import { Verdict } from '../verdict';

/** A standby vacuum source or pump runs although nobody has taken it in hand: the first one is weak. */
export const vsrc2: UnitEntry = {
  id: 'VSRC-2',
  title: 'A standby vacuum source or pump has started by itself',
  cause:
    'The first one is weak, has tripped, or faces a larger load; or its weekly change-over, where the controller does it alone.',
  consequence: 'Redundancy is in use: the next failure has nothing behind it.',
  action: {
    a: 'Find why the first one does not suffice: seal water, trap, gas load, filter, drive. Leave the standby running meanwhile.',
    b: 'Find why the first one does not suffice: seal water, trap, gas load, change-over valves, drive. Leave the standby running meanwhile.',
    c: 'Find why the first one does not suffice: seal water, trap, gas load, strainer, drive. Leave the standby running meanwhile.',
  },
  confirm: 'Compare the gas load with yesterday’s, and the speed of the first one with its usual speed.',
  timeToRespondS: 4 * 60 * 60,
  severity: 'major',
  worse: null,
  latching: false,
  defaults: { limit: 1, deadband: 0, onDelayMs: 5000, offDelayMs: 60_000 },
  unitOfMeasure: '1',
  basis:
    'Discrete. In hand (`control.manual`) it counts as started by a person; one that starts within five minutes after the separator’s set point was lowered is told as an alert for that time.',
  feeds: ['vacuum.standby.running', 'pump.standby.running'],
  offInModes: [],
  offWhenInferred: false,
  applies: (_unit, slots) => slots.vacuumStandbyRunning >= 0 || slots.pumpStandbyRunning >= 0,
  judge(context, limits, active, finding) {
    const { slots, state } = context;
    const vacuum = judgeStandby(context, slots.vacuumStandbyRunning);
    const pump = judgeStandby(context, slots.pumpStandbyRunning);
    finding.verdict = anyOf(vacuum, pump);
    followStart(context, vacuum);
    finding.expected = vacuum === Verdict.yes && pump !== Verdict.yes && drawsDeeper(context);
    const runs = (vacuum === Verdict.yes ? runsBit.vacuum : 0) + (pump === Verdict.yes ? runsBit.pump : 0);
    const inHand = usable(state, slots.controlManual) >= 0.5;
    if (!(active && inHand))
      finding.again = startsBeside(context, limits.onDelayMs, active && !finding.expected, finding.expected ? 0 : runs);
    if (finding.verdict !== Verdict.yes) return;
    if (!active && inHand) finding.verdict = Verdict.no;
    finding.value = 1;
    finding.limit = limits.limit;
    finding.where = nameOf(vacuum === Verdict.yes, pump === Verdict.yes, context.unit.shape);
  },
  detail: (context) => sealWaterSign(context),
};

/** So long the standby may help to draw the loop down to a set point that people have lowered: own rule. */
const drawDownMs = 300_000;
/** Set point and answer may be told in either order within so much. */
const controlMs = 5_000;

const cell = { startedMs: 0, told: 1, newSinceMs: 2 } as const;

/** Remembers since when the standby source runs; NaN while it stands. */
function followStart(context: UnitContext, vacuum: Verdict): void {
  const isNew = Number.isNaN(recall(context, cell.startedMs));
  // Nearly always it stands, and to read is cheaper than to write.
  if (vacuum === Verdict.no && !isNew) keep(context, cell.startedMs, Number.NaN);
  if (vacuum === Verdict.yes && isNew) keep(context, cell.startedMs, context.nowMs);
}

/**
 * The separator was told to hold less a short time ago, and the standby came after it: then the first one is not weak, and SET-1 tells
 * what was done. One that ran before was needed before.
 */
function drawsDeeper(context: UnitContext): boolean {
  const { nowMs, plant, slots, state, unitIndex } = context;
  const { changedMs, known } = plant.setPoints;
  const place = unitIndex * setPointCount + SetPoint.separator;
  const lowered = usable(state, slots.separatorSetPoint) < (known[place] as number);
  const sinceMs = changedMs[place] as number;
  return lowered && nowMs - sinceMs < drawDownMs && recall(context, cell.startedMs) >= sinceMs - controlMs;
}

const runsBit = { vacuum: 1, pump: 2 } as const;

/**
 * One standby was told, and the other has started since; not where that one only helps to draw the loop down.
 * @param runs bits of those that run; 0 where that is told as an alert, so that the alarm after it begins anew
 */
function startsBeside(context: UnitContext, onDelayMs: number, active: boolean, runs: number): boolean {
  const onlyHelps =
    runs === runsBit.vacuum + runsBit.pump && recall(context, cell.told) === runsBit.pump && drawsDeeper(context);
  return placesToTell(context, cell, onlyHelps ? runsBit.pump : runs, onDelayMs, active) !== 0;
}

const judgeStandby = ({ state }: UnitContext, slot: number): Verdict =>
  slot < 0 ? Verdict.no : judgeDiscrete(usable(state, slot));

function nameOf(vacuum: boolean, pump: boolean, shape: PlantShape): string {
  const name = shape === 'c' ? 'circulation pump' : 'transfer pump';
  if (vacuum && pump) return `vacuum source and ${name}`;
  return vacuum ? 'vacuum source' : name;
}
