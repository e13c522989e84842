import type { PlantInputs } from './plant-inputs';
import type { ExchangerParameters, PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { mixedC } from './cell';
import { waterDensityKgPerM3, waterHeatJPerKgK, waterHeatJPerM3K } from './water';

/** UA of each side grows with flow to this power. Common practice, 0.7 to 0.8. */
const flowPower = 0.75;
/** UA left when the facility water stands: natural convection, as a share of UA. An estimate. */
const standingShare = 0.05;
const standingBelowKgPerS = 0.05;

/**
 * Counterflow exchanger between the pump line and the supply tank: two lumps of water, the heat between them
 * from the flows and the two inlet temperatures.
 * @returns temperature of the water that goes on to the supply tank.
 */
export function stepExchanger(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  dtS: number,
): number {
  const { exchanger, volumeM3 } = parameters;
  const hotKgPerS = state.last.transferM3PerS * waterDensityKgPerM3;
  const coldKgPerS = exchanger.facilityFullKgPerS * state.valvePosition * inputs.facilityFlowShare;
  const half = volumeM3.unit / 2;
  const heatW = heatFlowW(worn(exchanger, inputs), state, hotKgPerS, coldKgPerS, inputs.facilitySupplyC);
  const warm = (heatW * dtS) / waterHeatJPerM3K;
  state.exchangerHotC = mixedC(half, state.exchangerHotC, state.last.transferM3PerS * dtS, state.pumpLineC, -warm);
  const coldM3 = (coldKgPerS * dtS) / waterDensityKgPerM3;
  state.exchangerColdC = mixedC(half, state.exchangerColdC, coldM3, inputs.facilitySupplyC, warm);
  state.last.facilityKgPerS = coldKgPerS;
  state.last.exchangerW = heatW;
  state.sums.facilityHeatJ += coldKgPerS * waterHeatJPerKgK * (state.exchangerColdC - inputs.facilitySupplyC) * dtS;
  return state.exchangerHotC;
}

function worn(exchanger: ExchangerParameters, { condition }: PlantInputs): ExchangerParameters {
  if (condition.exchangerShare === 1) return exchanger;
  return { ...exchanger, uaWPerK: exchanger.uaWPerK * condition.exchangerShare };
}

function heatFlowW(
  exchanger: ExchangerParameters,
  state: PlantState,
  hotKgPerS: number,
  coldKgPerS: number,
  facilityC: number,
): number {
  const standing = standingShare * exchanger.uaWPerK * (state.exchangerHotC - state.exchangerColdC);
  const limit = standingBelowKgPerS * exchanger.referenceKgPerS;
  if (coldKgPerS < limit || hotKgPerS < limit) return standing;
  return (
    hotKgPerS *
    waterHeatJPerKgK *
    (state.pumpLineC - hotOutletC(exchanger, hotKgPerS, coldKgPerS, state.pumpLineC, facilityC))
  );
}

/** Hot outlet of a counterflow exchanger from its temperature differences: along the plates the difference of the two waters changes as exp(−UA (1/C₁ − 1/C₂)). */
function hotOutletC(
  exchanger: ExchangerParameters,
  hotKgPerS: number,
  coldKgPerS: number,
  hotInC: number,
  coldInC: number,
): number {
  const { referenceKgPerS: reference } = exchanger;
  const film = 0.5 * (reference / hotKgPerS) ** flowPower + 0.5 * (reference / coldKgPerS) ** flowPower;
  const ua = exchanger.uaWPerK / film;
  const hot = hotKgPerS * waterHeatJPerKgK;
  const cold = coldKgPerS * waterHeatJPerKgK;
  const z = ua * (1 / hot - 1 / cold);
  if (Math.abs(z) < 1e-5) return hotInC - ((hotInC - coldInC) * ua) / (ua + hot);
  const fall = Math.exp(-z);
  // (hotOut − coldIn) = (hotIn − coldOut) / fall and hot (hotIn − hotOut) = cold (coldOut − coldIn)
  const ratio = hot / cold;
  return (hotInC * (1 - ratio) + coldInC * (1 / fall - 1)) / (1 / fall - ratio);
}
