/**
 * Branded numbers. The brand is the unit of measure, so that a gauge pressure cannot be
 * handed to something that wants an absolute one, nor litres per minute to something in m³/s.
 * At run time they are plain numbers: no cost.
 */
declare const unit: unique symbol;
type Quantity<Unit extends string> = number & { readonly [unit]: Unit };

/** Pressure against vacuum, Pa. */
export type PascalAbsolute = Quantity<'Pa absolute'>;
/** Pressure against ambient, Pa; negative below ambient. */
export type PascalGauge = Quantity<'Pa gauge'>;
/** A difference of two pressures, Pa. */
export type PascalDifference = Quantity<'Pa difference'>;
export type Celsius = Quantity<'Cel'>;
export type Kelvin = Quantity<'K'>;
/** A difference of two temperatures, K. */
export type KelvinDifference = Quantity<'K difference'>;
export type Metre = Quantity<'m'>;
export type CubicMetrePerSecond = Quantity<'m3/s'>;
/** Gas flow counted as free air: m³/s at 20 °C and 101.325 kPa. */
export type FreeAirCubicMetrePerSecond = Quantity<'m3/s free air'>;
export type KilogramPerSecond = Quantity<'kg/s'>;
export type KilogramPerCubicMetre = Quantity<'kg/m3'>;
export type JoulePerKilogramKelvin = Quantity<'J/(kg.K)'>;
/** Share of the mass of a mixture, as a ratio; never one of its volume. */
export type MassFraction = Quantity<'mass fraction'>;
/** Share of the volume of a mixture as its parts were measured out, as a ratio. */
export type VolumeFraction = Quantity<'volume fraction'>;
export type Watt = Quantity<'W'>;

export const pascalAbsolute = (value: number): PascalAbsolute => value as PascalAbsolute;
export const pascalGauge = (value: number): PascalGauge => value as PascalGauge;
export const pascalDifference = (value: number): PascalDifference => value as PascalDifference;
export const celsius = (value: number): Celsius => value as Celsius;
export const kelvin = (value: number): Kelvin => value as Kelvin;
export const kelvinDifference = (value: number): KelvinDifference => value as KelvinDifference;
export const metre = (value: number): Metre => value as Metre;
export const cubicMetrePerSecond = (value: number): CubicMetrePerSecond => value as CubicMetrePerSecond;
export const freeAirCubicMetrePerSecond = (value: number): FreeAirCubicMetrePerSecond =>
  value as FreeAirCubicMetrePerSecond;
export const kilogramPerSecond = (value: number): KilogramPerSecond => value as KilogramPerSecond;
export const kilogramPerCubicMetre = (value: number): KilogramPerCubicMetre => value as KilogramPerCubicMetre;
export const joulePerKilogramKelvin = (value: number): JoulePerKilogramKelvin => value as JoulePerKilogramKelvin;
export const massFraction = (value: number): MassFraction => value as MassFraction;
export const volumeFraction = (value: number): VolumeFraction => value as VolumeFraction;
export const watt = (value: number): Watt => value as Watt;
