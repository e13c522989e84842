/**
 * Every point that Ebbline knows. The id is a contract: it is never renamed and never given another
 * unit of measure. `<id>` stands for the id of a branch or a plate, `<analyte>` for a water parameter.
 * Units of measure are UCUM codes (ucum.org), SI or °C; gas flows are free air at 20 °C and 101.325 kPa.
 */
export interface PointDefinition {
  readonly id: string;
  readonly kind: 'measured' | 'derived';
  /** UCUM code; '1' for a ratio, a count or a yes/no (0 or 1). */
  readonly unit: string;
  readonly quantity: QuantityKind;
  readonly holder: 'unit' | 'hall';
  readonly title: string;
}

/** What is measured; decides which units of measure a site file may name for it and how a screen prints it. */
export type QuantityKind =
  | 'temperature'
  | 'temperatureDifference'
  | 'absolutePressure'
  | 'pressureDifference'
  | 'volumeFlow'
  | 'freeAirFlow'
  | 'massFlow'
  | 'level'
  | 'power'
  | 'ratio'
  | 'relativeHumidity'
  | 'yesNo'
  | 'mode'
  | 'conductivity'
  | 'ph'
  | 'turbidity'
  | 'concentration'
  | 'thermalConductance'
  | 'thermalResistance';

type Row = readonly [id: string, quantity: QuantityKind, unit: string, title: string];

const measuredOfUnit: readonly Row[] = [
  ['supply.temperature', 'temperature', 'Cel', 'Supply temperature'],
  ['return.temperature', 'temperature', 'Cel', 'Return temperature'],
  ['facility.supply.temperature', 'temperature', 'Cel', 'Facility water supply temperature'],
  ['facility.return.temperature', 'temperature', 'Cel', 'Facility water return temperature'],
  ['supply.pressure', 'absolutePressure', 'Pa', 'Supply pressure'],
  ['return.pressure', 'absolutePressure', 'Pa', 'Return pressure'],
  ['supplyTank.pressure', 'absolutePressure', 'Pa', 'Supply tank pressure'],
  ['separator.pressure', 'absolutePressure', 'Pa', 'Separator pressure'],
  ['pump.inlet.pressure', 'absolutePressure', 'Pa', 'Pump inlet pressure'],
  ['loop.flow', 'volumeFlow', 'm3/s', 'Loop flow'],
  ['facility.flow', 'volumeFlow', 'm3/s', 'Facility water flow'],
  ['supplyTank.level', 'level', 'm', 'Supply tank level'],
  ['separator.level', 'level', 'm', 'Separator level'],
  ['filter.pressureDrop', 'pressureDifference', 'Pa', 'Filter pressure drop'],
  ['pump.speed', 'ratio', '1', 'Pump speed'],
  ['pump.power', 'power', 'W', 'Pump power'],
  ['pump.running', 'yesNo', '1', 'Pump running'],
  ['vacuum.speed', 'ratio', '1', 'Vacuum source speed'],
  ['vacuum.running', 'yesNo', '1', 'Vacuum source running'],
  ['vacuum.exhaustFlow', 'freeAirFlow', 'm3/s', 'Vacuum exhaust flow (free air)'],
  ['valve.command', 'ratio', '1', 'Facility valve command'],
  ['valve.position', 'ratio', '1', 'Facility valve position'],
  ['unit.power', 'power', 'W', 'Electrical power of the unit'],
  ['water.found', 'yesNo', '1', 'Water found'],
  ['mode', 'mode', '1', 'Mode'],
  ['water.conductivity', 'conductivity', 'S/m', 'Conductivity'],
  ['water.ph', 'ph', '1', 'pH'],
  ['water.turbidity', 'turbidity', '{NTU}', 'Turbidity'],
  ['water.inhibitor', 'concentration', 'kg/m3', 'Inhibitor'],
  ['branch.<id>.flow', 'volumeFlow', 'm3/s', 'Branch flow'],
  ['branch.<id>.return.temperature', 'temperature', 'Cel', 'Branch return temperature'],
  ['branch.<id>.return.pressure', 'absolutePressure', 'Pa', 'Branch return pressure'],
  ['branch.<id>.power', 'power', 'W', 'Branch power'],
  ['plate.<id>.temperature', 'temperature', 'Cel', 'Chip case temperature'],
  ['plate.<id>.power', 'power', 'W', 'Chip power'],
];

const measuredOfHall: readonly Row[] = [
  ['ambient.pressure', 'absolutePressure', 'Pa', 'Ambient pressure'],
  ['hall.temperature', 'temperature', 'Cel', 'Hall temperature'],
  ['hall.humidity', 'relativeHumidity', '1', 'Hall relative humidity'],
];

const derivedOfHall: readonly Row[] = [['dewPoint', 'temperature', 'Cel', 'Dew point']];

const derivedOfUnit: readonly Row[] = [
  ['massFlow', 'massFlow', 'kg/s', 'Mass flow'],
  ['heatRemoved', 'power', 'W', 'Heat removed'],
  ['facilityHeat', 'power', 'W', 'Facility heat'],
  ['chipPower', 'power', 'W', 'Chip power'],
  ['capture', 'ratio', '1', 'Capture (heat removed ÷ chip power)'],
  ['heatBalance', 'ratio', '1', 'Heat balance'],
  ['approach', 'temperatureDifference', 'K', 'Approach'],
  ['lmtd', 'temperatureDifference', 'K', 'Log mean temperature difference'],
  ['effectiveness', 'ratio', '1', 'Effectiveness'],
  ['ntu', 'ratio', '1', 'Number of transfer units'],
  ['ua', 'thermalConductance', 'W/K', 'UA'],
  ['vacuumMargin', 'pressureDifference', 'Pa', 'Vacuum margin'],
  ['vacuumMarginWorst', 'pressureDifference', 'Pa', 'Vacuum margin, worst of running and stopped'],
  ['boilingMargin', 'pressureDifference', 'Pa', 'Boiling margin'],
  ['lowerWallMargin', 'pressureDifference', 'Pa', 'Margin to the nearest lower wall'],
  ['drivingPressure', 'pressureDifference', 'Pa', 'Driving pressure'],
  ['gasLoad', 'freeAirFlow', 'm3/s', 'Gas load (free air)'],
  ['inLeak', 'freeAirFlow', 'm3/s', 'In-leak (free air)'],
  ['vacuumReserve', 'freeAirFlow', 'm3/s', 'Vacuum reserve (free air)'],
  ['openingsCarried', 'ratio', '1', 'Open hoses carried'],
  ['dewPointMargin', 'temperatureDifference', 'K', 'Dew point margin'],
  ['filterResistance', 'ratio', '1', 'Filter resistance relative to clean'],
  ['plate.<id>.resistance', 'thermalResistance', 'K/W', 'Plate resistance, case to supply'],
  ['branch.<id>.heatRemoved', 'power', 'W', 'Branch heat removed'],
];

const define =
  (kind: PointDefinition['kind'], holder: PointDefinition['holder']) =>
  ([id, quantity, unit, title]: Row): PointDefinition => ({ id, kind, unit, quantity, holder, title });

export const pointTable: readonly PointDefinition[] = [
  ...measuredOfUnit.map(define('measured', 'unit')),
  ...measuredOfHall.map(define('measured', 'hall')),
  ...derivedOfHall.map(define('derived', 'hall')),
  ...derivedOfUnit.map(define('derived', 'unit')),
];

const byId = new Map(pointTable.map((definition) => [definition.id, definition]));

/** `branch.r5.flow` → `branch.<id>.flow`; ids without a part of their own come back unchanged. */
export function pointPattern(id: string): string {
  return id.replace(/^(branch|plate)\.[^.]+\./, '$1.<id>.');
}

/** The definition behind a point id, or undefined where Ebbline knows no such point. */
export function pointDefinition(id: string): PointDefinition | undefined {
  return byId.get(pointPattern(id));
}
