import { volumeFraction, type VolumeFraction } from '../units/quantity';
import type { GlycolEquations } from './glycol-equations';

const equation = 'ASHRAE Fundamentals (2001), propylene glycol';

/**
 * Inhibited propylene glycol with water by VOLUME fraction: the tables of ASHRAE Handbook – Fundamentals (2001), Physical
 * Properties of Secondary Coolants, by Skovrup's (2013) polynomials about 35 % by volume and 32.5 °C. They meet the tables within
 * 0.1 kg/m³, 2 J/(kg K), 0.001 W/(m K) and 2 % of viscosity at 20 … 30 % and 30 … 60 °C.
 */
export const glycolOfAshrae: GlycolEquations<VolumeFraction> = {
  name: 'ASHRAE Handbook – Fundamentals (2001), tables of inhibited propylene glycol by volume fraction',
  baseC: 32.5,
  baseFraction: volumeFraction(0.35),
  temperature: { equation, quantity: 'temperature', unit: '°C', minimum: -35, maximum: 100 },
  fraction: { equation, quantity: 'volume fraction', unit: '', minimum: 0.1, maximum: 0.6 },
  density: [
    [1026.177, 72.53677, -65.32547, 34.66575, -15.82785, -213.9879],
    [-0.5350059, -0.5056296, 0.1751278, -0.092333, 0.02877433],
    [-0.002566157, -0.0001703579, 0.001165892, -0.000207517],
    [-5.177362e-9, 9.673215e-9, 3.368862e-7],
  ],
  heatCapacity: [
    [3815.392, -1391.877, -1121.4, -419.3939, -243.53, 4054.145],
    [3.025751, 5.558605, -0.1073388, 0.5290725, -2.262081],
    [4.165345e-5, -9.03207e-5, -0.003392169, 0.01079472],
    [-4.309483e-7, -1.33518e-6, 3.538903e-5],
  ],
  thermalConductivity: [
    [0.4329771, -0.4535551, 0.1845012, -0.2435214, 0.06266485, 1.891363],
    [0.0007338869, -0.001966849, 0.0009861397, -1.817568e-5, -0.001628752],
    [-5.424175e-6, 1.100798e-5, -3.754805e-6, 5.476691e-7],
    [5.879754e-10, -6.777235e-10, -2.213073e-8],
  ],
  logViscosity: [
    [-6.025825, 3.573663, -1.995205, -6.42511, 36.01949, 53.50879],
    [-0.03284399, -0.03838339, 0.08223532, 0.01520795, -1.123741],
    [0.0002492009, 0.0003529886, -0.0005119547, -0.0006572286],
    [-1.155771e-6, -1.216539e-6, 3.230125e-6],
  ],
};
