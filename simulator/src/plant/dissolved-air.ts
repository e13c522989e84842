import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { saturationPressurePa } from './vapour-pressure';

/**
 * Air that water holds at equilibrium, mol/(m³·Pa of dry air): 10.1 mL(STP)/L at 35 °C over 68.4 kPa dry and
 * 3.0 at 45 °C over 22.4 kPa dry; linear between. Source: solubility after Weiss (1970), rounded.
 */
const solubleAt35 = 10.1 / 22.414 / 68400;
const solubleAt45 = 3.0 / 22.414 / 22400;
/** Exchange area and time let a tenth of the equilibrium difference through. From memory. */
const exchangeShareOfFlow = 2 / 9;

function equilibriumMolPerM3(pressurePa: number, waterC: number): number {
  const soluble = solubleAt35 + ((solubleAt45 - solubleAt35) * (waterC - 35)) / 10;
  return soluble * Math.max(0, pressurePa - saturationPressurePa(waterC));
}

/** A tank that is almost empty has little water to give or take air. */
function wettedShare(waterM3: number, usualM3: number): number {
  return Math.min(1, Math.max(0, waterM3 / (0.2 * usualM3)));
}

/** Water takes up air in the supply tank, carries it round and lets it go in the separator: the gas load of a tight loop. */
export function stepDissolvedAir(parameters: PlantParameters, state: PlantState, dtS: number): void {
  const { last } = state;
  const { volumeM3 } = parameters;
  const whole = exchangeShareOfFlow * parameters.ratedFlowM3PerS;
  const exchangeUp = whole * wettedShare(state.supplyTankWaterM3, volumeM3.supplyTankWater);
  const exchangeOut = whole * wettedShare(state.separatorWaterM3, volumeM3.separatorWater);
  const inSupply = state.supplyTankDissolvedMol / state.supplyTankWaterM3;
  const inSeparator = state.separatorDissolvedMol / state.separatorWaterM3;
  const up = exchangeUp * (equilibriumMolPerM3(last.supplyTankPa, state.supplyTankC) - inSupply);
  const out = exchangeOut * (inSeparator - equilibriumMolPerM3(last.separatorPa, state.separatorC));
  const round = last.loopFlowM3PerS * inSupply;
  const back = last.transferM3PerS * inSeparator;
  state.supplyTankDissolvedMol += (up + back - round) * dtS;
  state.separatorDissolvedMol += (round - back - out) * dtS;
  state.supplyTankGasMol -= up * dtS;
  state.separatorGasMol += out * dtS;
}
