/** The part of it that is asked; SI units. The package has no types of its own. */
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: unknown;
    SetUnitSystem(system: unknown): void;
    /** °C from °C and relative humidity as a ratio. */
    GetTDewPointFromRelHum(temperature: number, relativeHumidity: number): number;
    /** Pa. */
    GetSatVapPres(temperature: number): number;
    /** Pa by altitude in m. */
    GetStandardAtmPressure(altitude: number): number;
  }
  const psychrolib: Psychrolib;
  export default psychrolib;
}
