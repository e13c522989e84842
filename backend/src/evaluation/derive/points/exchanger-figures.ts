import { conductance } from '@ebbline/shared/heat/conductance';
import { effectiveness, ntuOfEffectiveness } from '@ebbline/shared/heat/counterflow';
import { logMeanDifference } from '@ebbline/shared/heat/lmtd';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { exchangerNow, takeTerminals } from '../exchanger';
import { emptyExchanger, type Exchanger } from '../exchanger-state';
import type { UnitFrame } from '../unit-frame';
import { uOf, writePoint } from '../write-point';

const terminals = emptyExchanger();

/** Log mean temperature difference between loop and facility water, K. */
export function deriveLmtd(frame: UnitFrame): void {
  frame.tally.begin();
  takeTerminals(frame, terminals);
  const value = logMeanDifference(terminals.warmEnd, terminals.coldEnd);
  writePoint(frame, frame.plan.slot.lmtd, value, value * logMeanRelativeU(terminals));
}

/** Share of the heat that could go over at most that does. Above 1 a sensor is wrong: contradicted. */
export function deriveEffectiveness(frame: UnitFrame): void {
  const exchanger = exchangerNow(frame);
  const value = epsilon(frame, exchanger);
  const possible = value >= 0 && value <= 1 ? value : Number.NaN;
  writePoint(frame, frame.plan.slot.effectiveness, possible, possible * effectivenessRelativeU(frame, exchanger));
}

/** Number of transfer units, by effectiveness and capacity rates. */
export function deriveNtu(frame: UnitFrame): void {
  const exchanger = exchangerNow(frame);
  const { loopRate, facilityRate } = exchanger;
  const ratio = Math.min(loopRate, facilityRate) / Math.max(loopRate, facilityRate);
  const value = epsilon(frame, exchanger);
  const ntu = ntuOfEffectiveness(value, ratio);
  // dNTU/dε = 1/((1 − ε)(1 − ε C_r)), by differentiating the formula.
  const slope = 1 / ((1 - value) * (1 - value * ratio));
  writePoint(frame, frame.plan.slot.ntu, ntu, slope * value * effectivenessRelativeU(frame, exchanger));
}

/** UA of the exchanger, W/K: heat over log mean difference. */
export function deriveUa(frame: UnitFrame): void {
  const exchanger = exchangerNow(frame);
  const value = conductance(exchanger.heat, logMeanDifference(exchanger.warmEnd, exchanger.coldEnd));
  const relative = combine2(exchanger.heatU / exchanger.heat, logMeanRelativeU(exchanger));
  writePoint(frame, frame.plan.slot.ua, value, value * relative);
}

const epsilon = (frame: UnitFrame, { heat, loopRate, facilityRate }: Exchanger): number =>
  effectiveness(heat, Math.min(loopRate, facilityRate), inletDifference(frame));

/** Loop return minus facility supply: both come in. */
const inletDifference = ({ state, plan, returnTemperature }: UnitFrame): number =>
  returnTemperature - (state.value[plan.slot['facility.supply.temperature']] ?? Number.NaN);

/** u(LMTD)/LMTD of its two ends, each counted by its share: near d₁ = d₂ each moves the mean by half its own change. */
const logMeanRelativeU = ({ warmEnd, coldEnd, warmEndU, coldEndU }: Exchanger): number =>
  combine2((0.5 * warmEndU) / warmEnd, (0.5 * coldEndU) / coldEnd);

/** The flow's own part is in the heat. */
function effectivenessRelativeU(frame: UnitFrame, { heat, heatU }: Exchanger): number {
  const { slot } = frame.plan;
  const inlets = combine2(uOf(frame, slot['return.temperature']), uOf(frame, slot['facility.supply.temperature']));
  return combine2(heatU / heat, inlets / inletDifference(frame));
}
