import { massFraction, type MassFraction } from '../units/quantity';
import type { GlycolEquations } from './glycol-equations';

const equation = 'Melinder (2010), propylene glycol';

/**
 * Propylene glycol with water, without inhibitor, by MASS fraction. Melinder, Properties of Secondary Working Fluids for
 * Indirect Systems, 2nd ed., IIR 2010: polynomials about 36 % by mass and −2.5 °C.
 */
export const glycolOfMelinder: GlycolEquations<MassFraction> = {
  name: 'Melinder, Properties of Secondary Working Fluids (IIR 2010), propylene glycol by mass fraction',
  baseC: -2.5,
  baseFraction: massFraction(0.36),
  temperature: { equation, quantity: 'temperature', unit: '°C', minimum: -45, maximum: 40 },
  fraction: { equation, quantity: 'mass fraction', unit: '', minimum: 0.15, maximum: 0.57 },
  density: [
    [1039.228, 102.8391, -123.5976, 144.4155, 1100.783, -6033],
    [-0.3643274, -1.363253, 2.190903, 2.141699, -29.15],
    [-0.003519521, 0.01436973, -0.05431317, -0.03025999],
    [3.065674e-6, -0.0001320439, 0.001153],
  ],
  heatCapacity: [
    [3800.663, -1873.36, -1929.321, 7895.204, 7505.431, -106800],
    [0.4621305, 13.36663, 1.929735, -43.96823, -9.049997],
    [0.02279298, -0.1520443, 0.08836986, 1.286],
    [-4.755331e-5, 0.000918551, -0.003148],
  ],
  thermalConductivity: [
    [0.4017953, -0.3947097, 0.2673757, -0.6062051, -3.928354, 12.9],
    [0.0006835028, -0.001656349, 0.002689752, -0.01022471, 0.01437],
    [-3.579661e-7, 5.710679e-6, -7.138804e-5, 0.0003005],
    [3.744296e-9, -2.305978e-7, 1.271e-6],
  ],
  logViscosity: [
    [-4.519263907, 5.137488, -1.330753, -5.819563, 38.6891, 109.2],
    [-0.05858686, -0.06918172, 0.1133354, 0.003009531, -1.43],
    [0.000638754, 0.0005412841, -0.004588068, -0.001212],
    [-5.369558e-6, 3.294494e-7, 8.562e-5],
  ],
};
