import { conductance } from '@ebbline/shared/heat/conductance';
import { effectiveness, ntuByEffectiveness, ntuByRatio, ntuOfEffectiveness } from '@ebbline/shared/heat/counterflow';
import { logMeanDifference, logMeanSlope } from '@ebbline/shared/heat/lmtd';
import { exchangerNow, inletDifference, takeTerminals } from '../exchanger';
import {
  ExchangerInput,
  exchangerParts,
  facilityRateSensitivities,
  heatSensitivities,
  noSensitivities,
  type Sensitivities,
} from '../exchanger-parts';
import { emptyExchanger, type Exchanger } from '../exchanger-state';
import type { UnitFrame } from '../unit-frame';
import { writePoint } from '../write-point';

const terminals = emptyExchanger();
const byHeat = noSensitivities();
const byLeast = noSensitivities();
const byMost = noSensitivities();
const by = noSensitivities();

/** Log mean temperature difference between loop and facility water, K. */
export function deriveLmtd(frame: UnitFrame): void {
  frame.tally.begin();
  takeTerminals(frame, terminals);
  const value = logMeanDifference(terminals.warmEnd, terminals.coldEnd);
  by.fill(0);
  addLogMean(terminals, 1, by);
  writePoint(frame, frame.plan.slot.lmtd, value, exchangerParts(frame, terminals, by));
}

/** Share of the heat that could go over at most that does. Above 1 a sensor is wrong: contradicted. */
export function deriveEffectiveness(frame: UnitFrame): void {
  const exchanger = exchangerNow(frame);
  const value = epsilon(frame, exchanger);
  const possible = value >= 0 && value <= 1 ? value : Number.NaN;
  epsilonSensitivities(frame, exchanger, value);
  writePoint(frame, frame.plan.slot.effectiveness, possible, exchangerParts(frame, exchanger, by));
}

/** Number of transfer units, by effectiveness and capacity rates. */
export function deriveNtu(frame: UnitFrame): void {
  const exchanger = exchangerNow(frame);
  const { loopRate, facilityRate } = exchanger;
  const least = Math.min(loopRate, facilityRate);
  const most = Math.max(loopRate, facilityRate);
  const ratio = least / most;
  const value = epsilon(frame, exchanger);
  epsilonSensitivities(frame, exchanger, value);
  const ofEpsilon = ntuByEffectiveness(value, ratio);
  const ofRatio = ntuByRatio(value, ratio);
  for (let i = 0; i < by.length; i += 1) {
    const moved = ratio * ((byLeast[i] ?? 0) / least - (byMost[i] ?? 0) / most);
    by[i] = ofEpsilon * (by[i] ?? 0) + ofRatio * moved;
  }
  writePoint(frame, frame.plan.slot.ntu, ntuOfEffectiveness(value, ratio), exchangerParts(frame, exchanger, by));
}

/** UA of the exchanger, W/K: heat over log mean difference. The thermometers are in both. */
export function deriveUa(frame: UnitFrame): void {
  const exchanger = exchangerNow(frame);
  const mean = logMeanDifference(exchanger.warmEnd, exchanger.coldEnd);
  const value = conductance(exchanger.heat, mean);
  heatSensitivities(exchanger, by);
  for (let i = 0; i < by.length; i += 1) by[i] = (by[i] ?? 0) / mean;
  addLogMean(exchanger, -value / mean, by);
  writePoint(frame, frame.plan.slot.ua, value, exchangerParts(frame, exchanger, by));
}

/** Adds `scale` times what each thermometer does to the log mean difference. */
function addLogMean({ warmEnd, coldEnd }: Exchanger, scale: number, into: Sensitivities): void {
  const warm = scale * logMeanSlope(warmEnd, coldEnd);
  const cold = scale * logMeanSlope(coldEnd, warmEnd);
  into[ExchangerInput.returned] = (into[ExchangerInput.returned] ?? 0) + warm;
  into[ExchangerInput.facilityReturn] = (into[ExchangerInput.facilityReturn] ?? 0) - warm;
  into[ExchangerInput.supply] = (into[ExchangerInput.supply] ?? 0) + cold;
  into[ExchangerInput.facilitySupply] = (into[ExchangerInput.facilitySupply] ?? 0) - cold;
}

const epsilon = (frame: UnitFrame, exchanger: Exchanger): number =>
  effectiveness(
    exchanger.heat,
    Math.min(exchanger.loopRate, exchanger.facilityRate),
    inletDifference(frame, exchanger),
  );

/** Of ε = Q/(C_min Δ): leaves those of the two capacity rates in `byLeast` and `byMost`. */
function epsilonSensitivities(frame: UnitFrame, exchanger: Exchanger, value: number): void {
  const { state, plan } = frame;
  const { loopRate, facilityRate, heat } = exchanger;
  const rise =
    (state.value[plan.slot['facility.return.temperature']] ?? Number.NaN) -
    (state.value[plan.slot['facility.supply.temperature']] ?? Number.NaN);
  const loopIsLeast = loopRate <= facilityRate;
  const byLoop = loopIsLeast ? byLeast : byMost;
  byLoop.fill(0);
  byLoop[ExchangerInput.loopShare] = loopRate;
  const metered = plan.slot['facility.flow'] >= 0;
  facilityRateSensitivities(exchanger, rise, metered, loopIsLeast ? byMost : byLeast);
  heatSensitivities(exchanger, byHeat);
  const least = Math.min(loopRate, facilityRate);
  const inlets = inletDifference(frame, exchanger);
  for (let i = 0; i < by.length; i += 1) by[i] = value * ((byHeat[i] ?? 0) / heat - (byLeast[i] ?? 0) / least);
  by[ExchangerInput.returned] = (by[ExchangerInput.returned] ?? 0) - value / inlets;
  by[ExchangerInput.facilitySupply] = (by[ExchangerInput.facilitySupply] ?? 0) + value / inlets;
}
