import { celsius, type Celsius } from '../units/quantity';

/** J/(mol·K) and C/mol, exact since 2019 (SI brochure, 9th edition). */
const molarGasConstant = 8.314462618;
const faradayConstant = 96_485.33212;

/** Volts per pH of an ideal electrode: R·T·ln 10 ÷ F (IUPAC Recommendations 2002, pH): 59.16 mV at 25 °C, 63.13 mV at 45 °C. */
export const electrodeSlope = (temperature: Celsius): number =>
  (molarGasConstant * (temperature + 273.15) * Math.LN10) / faradayConstant;

/** pH at which an electrode with the usual inner buffer gives 0 mV at any temperature. */
export const zeroPotentialPh = 7;

const slopeAt25 = electrodeSlope(celsius(25));

/**
 * pH of an electrode whose voltage was turned into pH with the slope of 25 °C, as that of its real temperature:
 * 7 + (pH − 7)·S(25 °C) ÷ S(t). Only the slope of the electrode is put right; how the water's own pH moves with temperature is not.
 */
export const phAtSlopeOf = (indicated: number, temperature: Celsius): number =>
  zeroPotentialPh + ((indicated - zeroPotentialPh) * slopeAt25) / electrodeSlope(temperature);
