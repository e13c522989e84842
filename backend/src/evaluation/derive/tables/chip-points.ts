import { resistanceAtFlow, thermalResistance } from '@ebbline/shared/heat/thermal-resistance';
import { steadyTemperature, timeToTemperature } from '@ebbline/shared/heat/time-to-temperature';
import { timeUntilGone } from '@ebbline/shared/hydraulics/tank-water';
import type { DerivedPointOfUnit } from '../derived-point';
import { derivePlateRatio, derivePlateResistance, hasPlateRatio, hasPlateResistance } from '../points/plate-resistance';
import {
  deriveRideThroughFans,
  deriveRideThroughFlow,
  deriveRideThroughPlate,
  deriveTemperatureOnFans,
  hasRideThroughFans,
  hasRideThroughFlow,
  hasRideThroughPlate,
  hasTemperatureOnFans,
} from '../points/ride-through';

/** Plates, the clocks that run when the water stands, and the water itself. */
export const chipPoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'plate.<id>.resistance',
    unit: 'K/W',
    inputs: ['plate.<id>.temperature', 'plate.<id>.power', 'supply.temperature'],
    formula: 'R = (T_case − T_supply) / P',
    source: 'definition of thermal resistance, case to inlet',
    equation: thermalResistance,
    derive: derivePlateResistance,
    applies: hasPlateResistance,
  },
  {
    id: 'plate.<id>.resistanceRatio',
    unit: '1',
    inputs: ['plate.<id>.resistance', 'branch.<id>.flow or loop.flow'],
    siteFigures: ['commissioning.plate.resistance', 'commissioning.plate.fixed', 'commissioning.plate.exponent'],
    formula: 'R / (a + b·(q/q₀)^−n)',
    source: 'own rule, after Bergman et al., Fundamentals of Heat and Mass Transfer, ch. 8: h ~ q^n',
    equation: resistanceAtFlow,
    derive: derivePlateRatio,
    applies: hasPlateRatio,
  },
  {
    id: 'rideThroughFlow',
    unit: 's',
    inputs: ['supplyTank.level', 'loop.flow'],
    siteFigures: ['volumes.supplyTankUsable', 'tanks.supplyUsualLevel', 'tanks.supplyArea'],
    formula: 't = V_usable / q',
    source: 'water balance of the supply tank',
    equation: timeUntilGone,
    derive: deriveRideThroughFlow,
    applies: hasRideThroughFlow,
  },
  {
    id: 'rideThroughPlate',
    unit: 's',
    inputs: ['plate.<id>.temperature', 'plate.<id>.power'],
    siteFigures: ['plateHeatCapacity', 'plateLimit'],
    formula: 't = C·(T_limit − T_case) / P',
    source: 'energy balance of a lump (Bergman et al., ch. 5)',
    equation: timeToTemperature,
    derive: deriveRideThroughPlate,
    applies: hasRideThroughPlate,
  },
  {
    id: 'rideThroughFans',
    unit: 's',
    inputs: ['plate.<id>.temperature', 'plate.<id>.power', 'hall.temperature'],
    siteFigures: ['plateHeatCapacity', 'plateLimit', 'fanPath.resistance'],
    formula: 't = −R·C·ln((T_∞ − T_limit) / (T_∞ − T_case)), T_∞ = T_hall + R·P',
    source: 'energy balance of a lump with loss (Bergman et al., eq. 5.25)',
    equation: timeToTemperature,
    derive: deriveRideThroughFans,
    applies: hasRideThroughFans,
  },
  {
    id: 'temperatureOnFans',
    unit: 'Cel',
    inputs: ['plate.<id>.power', 'hall.temperature'],
    siteFigures: ['fanPath.resistance'],
    formula: 'T_∞ = T_hall + R_fans·P',
    source: 'energy balance of a lump with loss, steady (Bergman et al., ch. 5)',
    equation: steadyTemperature,
    derive: deriveTemperatureOnFans,
    applies: hasTemperatureOnFans,
  },
];
