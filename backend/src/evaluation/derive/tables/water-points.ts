import { conductivityAt25 } from '@ebbline/shared/fluid-properties/conductivity';
import { phAtSlopeOf } from '@ebbline/shared/fluid-properties/ph-electrode';
import type { DerivedPointOfUnit } from '../derived-point';
import { deriveConductivity25, hasConductivity } from '../points/conductivity-25';
import { derivePh, hasPh } from '../points/ph';

/** Quality of the water: what sensors read, brought to what bands are stated for. */
export const waterPoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'conductivity25',
    unit: 'S/m',
    inputs: ['water.conductivity', 'supply.temperature'],
    formula: 'κ₂₅ = κ ÷ (1 + α·(t − 25 °C))',
    source: 'ISO 7888, linear form (α about 2 %/K, from memory)',
    equation: conductivityAt25,
    derive: deriveConductivity25,
    applies: hasConductivity,
  },
  {
    id: 'ph',
    unit: '1',
    inputs: ['water.ph', 'supply.temperature'],
    formula: 'pH = 7 + (pH_read − 7)·S(25 °C) ÷ S(t), S = R·T·ln 10 ÷ F',
    source: 'IUPAC Recommendations 2002, pH',
    equation: phAtSlopeOf,
    derive: derivePh,
    applies: hasPh,
  },
];
