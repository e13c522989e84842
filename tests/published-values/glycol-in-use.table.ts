import { glycolByVolume } from '@ebbline/shared/fluid-properties/glycol-fluid';
import { glycolVolumeOfMass } from '@ebbline/shared/fluid-properties/glycol-fraction';
import { waterFluid } from '@ebbline/shared/fluid-properties/water-fluid';
import { celsius, volumeFraction } from '@ebbline/shared/units/quantity';
import { absolute, type PublishedTable } from './published-table';

export const glycolVolumeOfMassTable: PublishedTable = {
  title: 'volume fraction of propylene glycol by its mass fraction, %',
  subject: { equation: glycolVolumeOfMass },
  evaluate: (equation, { x_mass = 0 }) => equation(x_mass / 100) * 100,
  rows: [
    {
      id: 'pg-volmass',
      status: 'published',
      source: 'ASHRAE Handbook – Fundamentals (2001), freezing and boiling points of aqueous propylene glycol',
      inputs: { x_mass: 25 },
      expected: 24.4,
      tolerance: absolute(0.05),
    },
  ],
};

function flowAgainstWater(t: number): number {
  const mix = glycolByVolume(volumeFraction(0.25));
  const at = celsius(t);
  return (waterFluid.density(at) * waterFluid.heatCapacity(at)) / (mix.density(at) * mix.heatCapacity(at));
}

export const glycolFlowTable: PublishedTable = {
  title: 'volume flow of 25 % propylene glycol by volume against water, at equal heat and difference',
  subject: { equation: flowAgainstWater },
  evaluate: (equation, { t = 0 }) => equation(t),
  rows: [
    {
      id: 'pg-flow-penalty',
      status: 'computed',
      source: 'ASHRAE Handbook – Fundamentals (2001), propylene glycol tables by volume fraction, and IAPWS SR6-08',
      inputs: { t: 40 },
      expected: 1.033,
      tolerance: absolute(0.002),
    },
  ],
};
