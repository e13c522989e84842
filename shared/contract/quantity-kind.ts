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
  | 'thermalResistance'
  | 'velocity'
  | 'heatFlux'
  | 'filmCoefficient'
  | 'foulingFactor'
  | 'volume'
  | 'duration'
  | 'bacteria';

/** One row of the point table: id, quantity, UCUM code, title. */
export type PointRow = readonly [id: string, quantity: QuantityKind, unit: string, title: string];
