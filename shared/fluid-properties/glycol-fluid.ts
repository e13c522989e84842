import {
  joulePerKilogramKelvin,
  kilogramPerCubicMetre,
  type Celsius,
  type MassFraction,
  type VolumeFraction,
} from '../units/quantity';
import type { Fluid } from './fluid';
import { glycolOfAshrae } from './glycol-ashrae';
import { ofMixture, type Coefficients, type GlycolEquations } from './glycol-equations';
import { glycolOfMelinder } from './glycol-melinder';
import { saturationPressure, saturationPressureSlope } from './saturation-pressure';

/** Published sets differ by about 1 % in c_p at 25 %: taken as its standard uncertainty. Own rule. */
const heatCapacityRelativeU = 0.01;

/** Inhibited glycol by the ASHRAE tables. 0.1 … 0.6 by volume; every property is NaN outside, and outside −35 … 100 °C. */
export const glycolByVolume = (fraction: VolumeFraction): Fluid =>
  mixture(glycolOfAshrae, fraction, `${percent(fraction)} propylene glycol by volume`);

/** Glycol by Melinder (2010). 0.15 … 0.57 by mass; every property is NaN outside, and outside −45 … 40 °C. */
export const glycolByMass = (fraction: MassFraction): Fluid =>
  mixture(glycolOfMelinder, fraction, `${percent(fraction)} propylene glycol by mass`);

const percent = (fraction: number): string => `${Number((fraction * 100).toPrecision(4))} %`;

function mixture<Fraction extends MassFraction | VolumeFraction>(
  equations: GlycolEquations<Fraction>,
  fraction: Fraction,
  name: string,
): Fluid {
  const { baseC, baseFraction, temperature: range } = equations;
  const inRange = fraction >= equations.fraction.minimum && fraction <= equations.fraction.maximum;
  const offset = inRange ? fraction - baseFraction : Number.NaN;
  const property = (table: Coefficients): ((temperature: Celsius) => number) => {
    const [c0, c1, c2, c3] = ofMixture(table, offset);
    return (temperature) => {
      if (!(temperature >= range.minimum && temperature <= range.maximum)) return Number.NaN;
      const t = temperature - baseC;
      return c0 + t * (c1 + t * (c2 + t * c3));
    };
  };
  const density = property(equations.density);
  const heatCapacity = property(equations.heatCapacity);
  const logViscosity = property(equations.logViscosity);
  return {
    name,
    source: equations.name,
    minimumC: range.minimum,
    maximumC: range.maximum,
    heatCapacityRelativeU,
    density: (temperature) => kilogramPerCubicMetre(density(temperature)),
    heatCapacity: (temperature) => joulePerKilogramKelvin(heatCapacity(temperature)),
    viscosity: (temperature) => Math.exp(logViscosity(temperature)),
    thermalConductivity: property(equations.thermalConductivity),
    // Of water: glycol at 40 °C has some 50 Pa only, so a mixture boils at a lower pressure (Raoult's law). Boiling comes early, never late.
    vapourPressure: saturationPressure,
    vapourPressureSlope: saturationPressureSlope,
  };
}
