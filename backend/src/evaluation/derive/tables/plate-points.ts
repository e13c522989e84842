import { heatFlux, temperatureAtFullPower } from '@ebbline/shared/heat/chip-at-full-power';
import { filmCoefficient } from '@ebbline/shared/heat/film-coefficient';
import { reynoldsNumber } from '@ebbline/shared/hydraulics/pipe-friction';
import type { DerivedPointOfUnit } from '../derived-point';
import { deriveFullPower, deriveHeatFlux, hasFullPower, hasHeatFlux } from '../points/chip-figures';
import {
  deriveChannelReynolds,
  deriveFilmCoefficient,
  hasChannelReynolds,
  hasFilmCoefficient,
} from '../points/film-coefficient';

/** What is told of each chip and plate besides its resistance. */
export const platePoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'plate.<id>.temperatureAtFullPower',
    unit: 'Cel',
    inputs: ['plate.<id>.temperature', 'plate.<id>.power', 'supply.temperature'],
    siteFigures: ['plateFullPower'],
    formula: 'T_full = T_supply + (T_case − T_supply)·P_full/P',
    source: 'definition of thermal resistance, which does not change with power (own rule)',
    equation: temperatureAtFullPower,
    derive: deriveFullPower,
    applies: hasFullPower,
  },
  {
    id: 'plate.<id>.heatFlux',
    unit: 'W/m2',
    inputs: ['plate.<id>.power'],
    siteFigures: ['chipArea'],
    formula: 'q″ = P ÷ A',
    source: 'definition',
    equation: heatFlux,
    derive: deriveHeatFlux,
    applies: hasHeatFlux,
  },
  {
    id: 'plate.<id>.filmCoefficient',
    unit: 'W/(m2.K)',
    inputs: ['plate.<id>.resistance', 'branch.<id>.flow or loop.flow', 'supply.temperature'],
    siteFigures: ['plateChannel.wettedArea', 'plateChannel.ratedFlow', 'plateChannel.wallResistance'],
    formula: 'h = 1 ÷ (A·(R − 1/(2·ρ·q·c_p) − R_wall))',
    source: 'Newton’s law of cooling: Bergman et al., Fundamentals of Heat and Mass Transfer, 7th ed., eq. 1.3a',
    equation: filmCoefficient,
    derive: deriveFilmCoefficient,
    applies: hasFilmCoefficient,
  },
  {
    id: 'plate.<id>.channelReynolds',
    unit: '1',
    inputs: ['branch.<id>.flow or loop.flow', 'supply.temperature', 'return.temperature'],
    siteFigures: ['plateChannel.ratedFlow', 'plateChannel.width', 'plateChannel.height', 'plateChannel.count'],
    formula: 'Re = ρ·v·D_h/μ, with D_h = 2·w·h/(w + h) and v = q/(N·w·h)',
    source: 'White, Fluid Mechanics, section 6.6',
    equation: reynoldsNumber,
    derive: deriveChannelReynolds,
    applies: hasChannelReynolds,
  },
];
