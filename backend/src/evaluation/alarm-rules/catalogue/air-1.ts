import { airOfBranchAlone, rememberNeighbours } from '../air-step/branch-alone';
import { branchCloses } from '../air-step/branch-closes';
import { airStillComes, rememberBefore, rememberStep } from '../air-step/air-still-comes';
import { scoreBranches, type BranchScore } from '../air-step/name-branch';
import { forgetTold, isSettled, opensBeside } from '../air-step/second-opening';
import { airWorth } from '../air-step/worth-of-signals';
import type { UnitEntry } from '../entry';
import type { Finding, UnitContext } from '../judge-context';
import { movingModes } from '../modes-of-rules';
import { outweighed } from '../air-step/outweighed';
import { isPlanned } from '../air-step/planned-opening';
import { airDetail } from '../air-step/air-detail';
import { Verdict } from '../verdict';

/** While a loop is filled, purged or started it gives off dissolved gas and pockets, and while a branch closes: the budget moves to so many limits. */
export const movingBudget = 3;

const score: BranchScore = { branch: -1, score: 0 };

/**
 * Air has begun to come in: a step worth more than `limit` of free air within five seconds, m³/s. Never suppressed by
 * mode; while water or gas is moved on purpose the limit is `movingBudget` times as large. An open permit moves it by what it
 * expects, on its own branch. Names the branch that shows it.
 * With alternating tanks each change-over moves gas and pressure more than an opening does: there one branch that stands out
 * from its neighbours is the sign, and return pressures of two branches are needed.
 * Needs `separator.pressure`: without it no signal can be told from the source drawing down, so it is never judged, not even
 * with an exhaust meter.
 */
export const air1: UnitEntry = {
  id: 'AIR-1',
  title: 'Air is coming in: a line has opened',
  cause: 'A hose or coupling has come open, or a hose change is being made.',
  consequence:
    'The branch fills with gas and its chips overheat; the vacuum reserve is used up, so that the next opening may not be carried.',
  action: {
    a: 'Look at the named rack, power off its servers and isolate it; keep the vacuum source running. Do not drain the separator: its level falls back by itself when the rack is isolated.',
    b: 'Look at the named rack, power off its servers and isolate it; keep the vacuum source and the tank change-over running. Do not drain: the level falls back by itself when the rack is isolated.',
    c: 'Look at the named rack, power off its servers and isolate it; keep the vacuum source running. Do not drain the reservoir: its level falls back by itself when the rack is isolated.',
  },
  confirm:
    'At the rack: a hissing line. In the readings: flow of that rack down, its return pressure up, separator level up, while the vacuum margin stays.',
  timeToRespondS: 5 * 60,
  severity: 'severe',
  worse: null,
  latching: false,
  defaults: { limit: 20 / 60_000, deadband: 0, onDelayMs: 2000, offDelayMs: 60_000 },
  unitOfMeasure: 'm3/s',
  basis: 'A cut server hose draws 80 free L/min and more (choked flow through its bore); a sound loop moves by a few.',
  feeds: [
    'separator.pressure',
    'separator.level',
    'supplyTank.level',
    'vacuum.speed',
    'vacuum.exhaustFlow',
    'branch.<id>.flow',
    'branch.<id>.return.pressure',
  ],
  offInModes: [],
  offWhenInferred: false,
  judge(context, limits, active, finding) {
    finding.limit = movingModes.includes(context.mode) ? limits.limit * movingBudget : limits.limit;
    finding.value = context.unit.shape === 'b' ? airOfBranchAlone(context) : airWorth(context);
    if (!active && finding.value > finding.limit && branchCloses(context)) finding.limit = limits.limit * movingBudget;
    if (finding.value > finding.limit) {
      nameBranch(context, finding, active);
      if (opensBeside(context, score, limits.onDelayMs, active)) nameSecond(context, finding);
      finding.verdict = !active && isPlanned(context, finding) ? Verdict.no : Verdict.yes;
      return;
    }
    if (active) {
      opensBeside(context, null, limits.onDelayMs, active);
      finding.verdict = airStillComes(context, finding.limit);
    } else finding.verdict = Number.isNaN(finding.value) ? Verdict.hold : Verdict.no;
    if (finding.verdict === Verdict.no && !active) forgetStep(context);
  },
  detail: (context) => airDetail(context),
};

/**
 * The strongest sign since the step began names the branch: a later, weaker look does not unsay it, a far stronger one on the loop does.
 * What comes once the step is over is of another opening (`nameSecond`), or of none.
 */
function nameBranch(context: UnitContext, finding: Finding, active: boolean): void {
  const { air, unit, unitIndex } = context;
  if (!active && Number.isNaN(air.gasBefore[unitIndex]) && Number.isNaN(air.waterBefore[unitIndex])) {
    rememberBefore(context);
  }
  scoreBranches(context, score);
  if (!isSettled(context, active) && score.score > (air.namedScore[unitIndex] as number)) {
    air.namedScore[unitIndex] = score.score;
    air.namedBranch[unitIndex] = score.branch;
    if (!active) rememberNeighbours(context, score.branch);
  }
  if (outweighed(air, context.site, unitIndex)) air.namedBranch[unitIndex] = -1;
  finding.where = unit.branches[air.namedBranch[unitIndex] as number]?.name ?? null;
}

/** Told anew, with the rack: whoever is at the first one knows nothing of it. */
function nameSecond(context: UnitContext, finding: Finding): void {
  const { air, unit, unitIndex } = context;
  air.namedBranch[unitIndex] = score.branch;
  air.namedScore[unitIndex] = score.score;
  rememberStep(context);
  finding.again = true;
  finding.where = unit.branches[score.branch]?.name ?? null;
}

function forgetStep(context: UnitContext): void {
  const { air, unitIndex } = context;
  air.gasBefore[unitIndex] = Number.NaN;
  air.waterBefore[unitIndex] = Number.NaN;
  air.neighboursBefore[unitIndex] = Number.NaN;
  air.namedBranch[unitIndex] = -1;
  air.namedScore[unitIndex] = 0;
  forgetTold(context);
}
