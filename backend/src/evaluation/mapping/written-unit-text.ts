const writtenAs: Readonly<Record<string, string>> = {
  degC: '°C',
  degF: '°F',
  'uS/cm': 'µS/cm',
  'gpm(US)': 'gpm',
};

/** A unit of measure as people write it, and as a site file takes it. */
export const writtenUnitText = (unit: string): string => writtenAs[unit] ?? unit;
