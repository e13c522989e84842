import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import type { WaterBand } from './compiled-water';

/** What a band says where the site file leaves it out. None where it depends on how the water is treated. */
type DefaultBand = Partial<Omit<WaterBand, 'basis'>> & { readonly basis: string };

const guidelines =
  'ASHRAE Liquid Cooling Guidelines for Datacom Equipment Centers, 2nd ed., technology loop (from memory)';
const milligramPerLitre = 0.001;
const nobody = 'depends on the treatment of the water: the site states it';

/** Defaults by parameter, SI. Most are common practice or from memory: a site states its own. */
export const defaultWaterBands: Readonly<Record<WaterParameterId, DefaultBand>> = {
  conductivity: { basis: `${nobody} (0.2 to 20 µS/cm without inhibitor, from memory)` },
  ph: { low: 8, high: 9.5, basis: `${guidelines}; 7 to 9 in another edition` },
  turbidity: { high: 20, basis: guidelines },
  inhibitor: { basis: nobody },
  molybdate: {
    basis:
      'the site states it: programmes near 40 mg/L as Mo (common practice, no source), others 150 to 500 mg/L as MoO₄ (common practice)',
  },
  nitrite: {
    low: 200 * milligramPerLitre,
    high: 1200 * milligramPerLitre,
    basis: 'nitrite for steel in closed loops: 200 to 1,200 mg/L, about 700 is usual (common practice)',
  },
  azole: {
    lowLow: 5 * milligramPerLitre,
    low: 10 * milligramPerLitre,
    high: 50 * milligramPerLitre,
    basis: 'azole for copper: 10 to 50 mg/L, below 5 act (common practice, from memory)',
  },
  copper: {
    high: 0.2 * milligramPerLitre,
    basis: 'below 0.1 mg/L is good, above 0.2 act (common practice, from memory)',
  },
  iron: { high: 0.2 * milligramPerLitre, basis: 'closed-loop specification: below 0.2 mg/L (common practice)' },
  chloride: { high: 5 * milligramPerLitre, basis: guidelines },
  sulfate: { high: 10 * milligramPerLitre, basis: guidelines },
  sulfide: { high: 1 * milligramPerLitre, basis: guidelines },
  hardness: { high: 20 * milligramPerLitre, basis: guidelines },
  residue: { basis: `${nobody} (below 50 mg/L without inhibitor, from memory)` },
  glycol: {
    low: 0.23,
    high: 0.27,
    basis: 'PG25: 23 to 27 % by volume; below about 20 to 25 % glycol feeds bacteria (common practice, from memory)',
  },
  bacteria: { high: 100, basis: guidelines },
};
