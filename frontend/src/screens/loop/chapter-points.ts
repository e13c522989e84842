/** A point and what it is called where it stands: shorter than its title, as the chapter says the rest. */
export type FactRow = readonly [point: string, label: string];

/** The points of each part of the loop, in the order in which they are read. */
export const tankFacts: readonly FactRow[] = [
  ['supplyTankRate', 'supply tank gains'],
  ['timeToEmpty', 'supply tank, time until empty'],
  ['separatorRate', 'separator gains'],
  ['timeToFull', 'separator, time until full'],
  ['waterVolume', 'water in both tanks'],
  ['topUpRate', 'top-up'],
  ['topUp.volume', 'top-up, counted'],
  ['transfer.flow', 'transfer, separator to supply tank'],
  ['separator.levelHigh', 'separator high-level switch'],
  ['supplyTank.vent.command', 'bleed or vent, command'],
  ['supplyTank.vent.position', 'bleed or vent, position'],
];

export const sharedTankFacts: readonly FactRow[] = [
  ['loopWaterVolume', 'water in the tanks of all units'],
  ['loopWaterRate', 'all tanks together gain'],
];

export const pumpFacts: readonly FactRow[] = [
  ['loop.flow', 'loop flow'],
  ['expectedFlow', 'expected of driving pressure'],
  ['flowShare', 'of what is expected'],
  ['loopResistance', 'loop resistance'],
  ['pump.speed', 'pump speed'],
  ['pump.power', 'pump power'],
  ['pumpEfficiency', 'efficiency, wire to water'],
  ['pumpHydraulicPower', 'power to the water'],
  ['pumpHeadRatio', 'pressure rise against commissioned'],
  ['pumpEfficiencyRatio', 'efficiency against commissioned'],
  ['mainVelocity', 'velocity in the mains'],
  ['mainVelocityShare', 'of permissible velocity'],
  ['mainFrictionLoss', 'friction of the straight mains'],
  ['npshAvailable', 'net positive suction head'],
  ['pump.available', 'standby pump available'],
  ['pump.standby.running', 'standby pump running'],
  ['filter.pressureDrop', 'filter pressure drop'],
  ['filterResistance', 'filter resistance'],
  ['filterTimeToLimit', 'filter at its limit in'],
];

export const airFacts: readonly FactRow[] = [
  ['gasLoad', 'gas load'],
  ['gasAllowance', 'accounted for'],
  ['inLeak', 'in-leak'],
  ['equivalentHole', 'as a hole on the return side, bore'],
  ['equivalentHoleSupply', 'as a hole on the supply side, bore'],
  ['vacuumReserve', 'vacuum reserve, one source'],
  ['vacuumReserveAll', 'vacuum reserve, all sources'],
  ['openingsCarried', 'still carried, one source'],
  ['openingsCarriedAll', 'still carried, all sources'],
  ['largestOpeningCarried', 'largest opening carried'],
  ['vacuum.exhaustFlow', 'exhaust'],
  ['vacuum.bleedFlow', 'bleed'],
  ['vacuum.speed', 'vacuum source speed'],
  ['vacuum.running', 'vacuum source running'],
  ['vacuum.available', 'standby source available'],
  ['vacuum.standby.running', 'standby source running'],
  ['vacuum.sealWater.temperature', 'seal water'],
  ['vacuum.sealWater.flow', 'seal water flow'],
  ['vacuum.trap.full', 'trap full'],
];

export const exchangerFacts: readonly FactRow[] = [
  ['approach', 'approach'],
  ['uaRatio', 'UA against clean, at the same flows'],
  ['ua', 'UA'],
  ['foulingResistance', 'fouling resistance'],
  ['foulingFactor', 'fouling of one square metre'],
  ['effectiveness', 'effectiveness'],
  ['facility.flow', 'facility water flow'],
  ['facility.supply.temperature', 'facility water in'],
  ['facility.return.temperature', 'facility water out'],
  ['facilityTemperatureRise', 'facility water rises by'],
  ['facilityHeat', 'heat to facility water'],
  ['heatBalance', 'heat balance'],
  ['supply.temperature', 'supply to the racks'],
  ['supply.setPoint', 'supply set point'],
  ['dewPointMargin', 'above the dew point'],
];

export const waterFacts: readonly FactRow[] = [
  ['conductivity25', 'conductivity at 25 °C'],
  ['water.conductivity', 'conductivity as measured'],
  ['ph', 'acidity'],
  ['water.ph', 'acidity as measured'],
  ['water.turbidity', 'turbidity'],
  ['water.inhibitor', 'inhibitor'],
  ['water.molybdate', 'molybdate, as Mo'],
  ['water.copper', 'copper'],
  ['water.bacteria', 'bacteria'],
];

/** What water leaves the loop and comes to it. */
export const waterWays: readonly FactRow[] = [
  ['exhaustWaterLoss', 'carried out by gas as vapour, at most'],
  ['waterBalance', 'gained in a day, not explained'],
  ['waterBalanceSignificance', 'the same, over its standard uncertainty'],
];

/** What changes slowly, and what has left its pattern. */
export const trendFacts: readonly FactRow[] = [
  ['marginTrend', 'vacuum margin, in a day'],
  ['marginTimeToLimit', 'vacuum margin at its limit in'],
  ['filterTrend', 'filter resistance, in a day'],
  ['inLeakTrend', 'in-leak, in a day'],
  ['uaTrend', 'UA against clean, in a day'],
  ['plateTrend', 'plate resistance, in a day'],
  ['heatBalanceShift', 'heat balance, since the known-good period'],
  ['captureShift', 'capture, since the known-good period'],
  ['flowShareShift', 'flow against expected, since the known-good period'],
  ['uaRatioShift', 'UA against clean, since the known-good period'],
  ['pumpEfficiencyShift', 'pump efficiency, since the known-good period'],
  ['inLeakShift', 'in-leak, since the known-good period'],
  ['patternDistance', 'along the usual pattern'],
  ['patternResidual', 'off the usual pattern'],
];

/** Of one branch, beside what its picture says. */
export const branchFacts = (branch: string): readonly FactRow[] => [
  [`branch.${branch}.resistanceRatio`, 'resistance'],
  [`branch.${branch}.manifoldVelocity`, 'velocity in the manifold'],
  [`branch.${branch}.manifoldVelocityShare`, 'of permissible velocity'],
];

/** Of one plate. */
export const plateFacts = (plate: string): readonly FactRow[] => [
  [`plate.${plate}.temperature`, 'now'],
  [`plate.${plate}.temperatureAtFullPower`, 'expected at full power'],
  [`plate.${plate}.resistanceRatio`, 'resistance, at equal flow'],
  [`plate.${plate}.heatFlux`, 'heat flux'],
  [`plate.${plate}.filmCoefficient`, 'film coefficient'],
  [`plate.${plate}.channelReynolds`, 'Reynolds number'],
];

export const idsOf = (rows: readonly FactRow[]): readonly string[] => rows.map(([id]) => id);
