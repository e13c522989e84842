import { cleanliness, conductance, foulingFactor, foulingResistance } from '@ebbline/shared/heat/conductance';
import { effectiveness, ntuOfEffectiveness } from '@ebbline/shared/heat/counterflow';
import { heatBalance, heatBalanceSignificance } from '@ebbline/shared/heat/heat-balance';
import { heatRate } from '@ebbline/shared/heat/heat-rate';
import { logMeanDifference } from '@ebbline/shared/heat/lmtd';
import { temperatureRise } from '@ebbline/shared/heat/temperature-rise';
import type { DerivedPointOfUnit } from '../derived-point';
import { hasExchanger, hasTerminals } from '../exchanger';
import { deriveEffectiveness, deriveLmtd, deriveNtu, deriveUa } from '../points/exchanger-figures';
import {
  deriveFoulingFactor,
  deriveFoulingResistance,
  deriveUaRatio,
  hasCleanConductance,
  hasFoulingFactor,
} from '../points/exchanger-fouling';
import { deriveFacilityHeat, deriveFacilityRise, hasFacilityHeat, hasFacilityRise } from '../points/facility-heat';
import { deriveHeatBalance, deriveHeatBalanceSignificance } from '../points/heat-balance';

const cleanFigures = [
  'commissioning.exchanger.ua',
  'commissioning.exchanger.loopFlow',
  'commissioning.exchanger.facilityFlow',
  'commissioning.exchanger.exponent',
  'commissioning.exchanger.films.loop',
  'commissioning.exchanger.films.facility',
  'commissioning.exchanger.films.wall',
] as const;

/** Facility side and the exchanger between both waters. */
export const exchangerPoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'facilityTemperatureRise',
    unit: 'K',
    inputs: ['facility.supply.temperature', 'facility.return.temperature'],
    formula: 'ΔT = T_return − T_supply',
    source: 'definition',
    equation: temperatureRise,
    derive: deriveFacilityRise,
    applies: hasFacilityRise,
  },
  {
    id: 'facilityHeat',
    unit: 'W',
    inputs: ['facility.flow', 'facility.supply.temperature', 'facility.return.temperature'],
    formula: 'Q = ρ·q·c_p·(T_return − T_supply)',
    source: 'first law, steady flow; uncertainty JCGM 100:2008 eq. 10, 13, 16',
    equation: heatRate,
    derive: deriveFacilityHeat,
    applies: hasFacilityHeat,
  },
  {
    id: 'heatBalance',
    unit: '1',
    inputs: ['heatRemoved', 'facilityHeat'],
    siteFigures: ['ratedHeat'],
    formula: 'Q_loop / Q_facility',
    source: 'first law over the exchanger',
    equation: heatBalance,
    derive: deriveHeatBalance,
    applies: hasFacilityHeat,
  },
  {
    id: 'heatBalanceSignificance',
    unit: '1',
    inputs: ['heatRemoved', 'facilityHeat'],
    siteFigures: ['ratedHeat'],
    formula: 'z = (Q_loop − Q_facility) / √(u²(Q_loop) + u²(Q_facility))',
    source: 'JCGM 100:2008 eq. 10',
    equation: heatBalanceSignificance,
    derive: deriveHeatBalanceSignificance,
    applies: hasFacilityHeat,
  },
  {
    id: 'lmtd',
    unit: 'K',
    inputs: ['supply.temperature', 'return.temperature', 'facility.supply.temperature', 'facility.return.temperature'],
    siteFigures: ['volumes.supplyToReturn', 'volumes.water'],
    formula: 'ΔT_lm = (d₁ − d₂) / ln(d₁/d₂)',
    source: 'Bergman et al., eq. 11.15',
    equation: logMeanDifference,
    derive: deriveLmtd,
    applies: hasTerminals,
  },
  {
    id: 'effectiveness',
    unit: '1',
    inputs: [
      'heatRemoved',
      'facilityHeat',
      'supply.temperature',
      'return.temperature',
      'facility.supply.temperature',
      'facility.return.temperature',
    ],
    siteFigures: ['volumes.supplyToReturn', 'volumes.water'],
    formula: 'ε = Q / (C_min·(T_h,in − T_c,in))',
    source: 'Bergman et al., eq. 11.19',
    equation: effectiveness,
    derive: deriveEffectiveness,
    applies: hasExchanger,
  },
  {
    id: 'ntu',
    unit: '1',
    inputs: [
      'heatRemoved',
      'facilityHeat',
      'supply.temperature',
      'return.temperature',
      'facility.supply.temperature',
      'facility.return.temperature',
    ],
    siteFigures: ['volumes.supplyToReturn', 'volumes.water'],
    formula: 'NTU = ln((1 − ε·C_r) / (1 − ε)) / (1 − C_r)',
    source: 'Bergman et al., table 11.4, counterflow',
    equation: ntuOfEffectiveness,
    derive: deriveNtu,
    applies: hasExchanger,
  },
  {
    id: 'ua',
    unit: 'W/K',
    inputs: [
      'heatRemoved',
      'facilityHeat',
      'supply.temperature',
      'return.temperature',
      'facility.supply.temperature',
      'facility.return.temperature',
    ],
    siteFigures: ['volumes.supplyToReturn', 'volumes.water'],
    formula: 'UA = Q / ΔT_lm',
    source: 'Bergman et al., eq. 11.14',
    equation: conductance,
    derive: deriveUa,
    applies: hasExchanger,
  },
  {
    id: 'uaRatio',
    unit: '1',
    inputs: ['ua', 'massFlow', 'facility.flow'],
    siteFigures: cleanFigures,
    formula: 'UA ÷ UA_clean, with 1/UA_clean = a·q_loop⁻ⁿ + b·q_facility⁻ⁿ + w',
    source: 'TEMA, cleanliness; films by flow to the power n = 0.7 to 0.8 (common practice, no source)',
    equation: cleanliness,
    derive: deriveUaRatio,
    applies: hasCleanConductance,
  },
  {
    id: 'foulingResistance',
    unit: 'K/W',
    inputs: ['ua', 'massFlow', 'facility.flow'],
    siteFigures: cleanFigures,
    formula: 'R = 1/UA − 1/UA_clean, with 1/UA_clean = a·q_loop⁻ⁿ + b·q_facility⁻ⁿ + w',
    source: 'Bergman et al., Fundamentals of Heat and Mass Transfer, 7th ed., eq. 11.5; TEMA',
    equation: foulingResistance,
    derive: deriveFoulingResistance,
    applies: hasCleanConductance,
  },
  {
    id: 'foulingFactor',
    unit: 'm2.K/W',
    inputs: ['ua', 'massFlow', 'facility.flow'],
    siteFigures: [...cleanFigures, 'commissioning.exchanger.area'],
    formula: 'R_f = A·(1/UA − 1/UA_clean)',
    source: 'Bergman et al., Fundamentals of Heat and Mass Transfer, 7th ed., eq. 11.5; TEMA',
    equation: foulingFactor,
    derive: deriveFoulingFactor,
    applies: hasFoulingFactor,
  },
];
