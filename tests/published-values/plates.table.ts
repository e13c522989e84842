import { liquidWaterDensity, liquidWaterHeatCapacity } from '@ebbline/shared/fluid-properties/liquid-water';
import { meanReferredResistance } from '@ebbline/shared/heat/film-coefficient';
import { celsius } from '@ebbline/shared/units/quantity';
import type { PlateChannel } from '../../backend/src/evaluation/site/compiled-pipes';
import { onRichUnit } from './on-rich-unit';
import { absolute, relative, type PublishedRow, type PublishedTable } from './published-table';

const trade = 'common practice, no source';
const ratedBranch = { 'branch.r1.flow': 43 / 60_000 };
const flowOfPlate = (kgPerS: number, t: number): number => kgPerS / liquidWaterDensity(celsius(t));

const mean: PublishedRow = {
  id: 'rth-mean',
  status: 'computed',
  source: 'T_mean = T_in + P/(2 m c_p) (computed)',
  inputs: { T_case: 62, T_in: 40, P: 700, m: 0.0167, cp: 4179 },
  expected: 0.024264,
  tolerance: absolute(1e-5),
};

export const meanResistanceTable: PublishedTable = {
  title: 'resistance of a cold plate referred to its mean water, K/W',
  subject: { equation: meanReferredResistance },
  evaluate: (equation, { T_case = 0, T_in = 0, P = 0, m = 0, cp = 0 }) => equation(T_case, T_in, P, m * cp),
  rows: [mean],
};

const channelOf = (ratedFlowM3PerS: number, wettedAreaM2: number, wallResistanceKPerW: number): PlateChannel => ({
  ratedFlowM3PerS,
  wettedAreaM2,
  wallResistanceKPerW,
  channel: null,
});

/** With one square metre of wetted area and no wall, the film coefficient is one over the resistance to the mean water. */
export const meanResistanceOnSiteTable: PublishedTable = {
  title: 'the same on a site, as one over the film coefficient of a square metre',
  subject: { point: 'plate.<id>.filmCoefficient' },
  evaluate: (equation) => 1 / equation(0.024264, 0, 1),
  onSite: {
    point: 'plate.<id>.filmCoefficient',
    evaluate: ({ T_case = 0, T_in = 0, P = 0, m = 0 }) =>
      1 /
      onRichUnit(
        'plate.p1.filmCoefficient',
        { ...ratedBranch, 'plate.p1.temperature': T_case, 'supply.temperature': T_in, 'plate.p1.power': P },
        { design: { plateChannel: channelOf(flowOfPlate(m, T_in), 1, 0) } },
      ),
  },
  rows: [mean],
};

/** 30 K at 1 kW from wall to water in both; the fins have 300 cm² of wetted area, the inserts 39 cm². */
const film = (id: string, area: number, expected: number, tolerance: PublishedRow['tolerance']): PublishedRow => ({
  id,
  status: 'common-practice',
  source: `${trade}; 1 ÷ (0.03 K/W × ${(area * 1e4).toFixed(0)} cm²)`,
  inputs: { film: 0.03, wall: 0.01, area },
  expected,
  tolerance,
});

export const filmCoefficientTable: PublishedTable = {
  title: 'film coefficient in a plate, W/(m²K)',
  subject: { point: 'plate.<id>.filmCoefficient' },
  evaluate: (equation, { film: ofFilm = 0, wall = 0, area = 0 }) => equation(ofFilm + wall, wall, area),
  onSite: {
    point: 'plate.<id>.filmCoefficient',
    evaluate: ({ film: ofFilm = 0, wall = 0, area = 0 }) => {
      const q = 1 / 60_000;
      const rate = q * liquidWaterDensity(celsius(35)) * liquidWaterHeatCapacity(celsius(35));
      return onRichUnit(
        'plate.p1.filmCoefficient',
        {
          ...ratedBranch,
          'supply.temperature': 35,
          'plate.p1.power': 300,
          'plate.p1.temperature': 35 + 300 * (ofFilm + wall + 1 / (2 * rate)),
        },
        { design: { plateChannel: channelOf(q, area, wall) } },
      );
    },
  },
  rows: [
    film('micro-fin plate, of order 1,000 W/(m²K)', 0.03, 1000, relative(0.15)),
    film('plate with swirl inserts, 8,000 to 9,000 W/(m²K)', 0.0039, 8500, absolute(500)),
  ],
};

export const heatFluxTable: PublishedTable = {
  title: 'heat flux of a chip, W/cm²',
  subject: { point: 'plate.<id>.heatFlux' },
  evaluate: (equation, { P = 0, A = 0 }) => equation(P, A * 1e-4) * 1e-4,
  onSite: {
    point: 'plate.<id>.heatFlux',
    evaluate: ({ P = 0, A = 0 }) =>
      onRichUnit('plate.p1.heatFlux', { 'plate.p1.power': P }, { design: { chipAreaM2: A * 1e-4 } }) * 1e-4,
  },
  rows: [
    {
      id: 'chip near 100 W/cm²',
      status: 'common-practice',
      source: `${trade}; 800 W through 8 cm²`,
      inputs: { P: 800, A: 8 },
      expected: 100,
      tolerance: relative(1e-6),
    },
  ],
};

/** Half of the power on a plate of 0.06 K/W in 35 °C water: 44 °C now, 53 °C at 300 W. */
export const fullPowerTable: PublishedTable = {
  title: 'chip temperature at full power, °C',
  subject: { point: 'plate.<id>.temperatureAtFullPower' },
  evaluate: (equation, { T_case = 0, T_in = 0, P = 0, P_full = 0 }) => equation(T_case, T_in, P, P_full),
  onSite: {
    point: 'plate.<id>.temperatureAtFullPower',
    evaluate: ({ T_case = 0, T_in = 0, P = 0, P_full = 0 }) =>
      onRichUnit(
        'plate.p1.temperatureAtFullPower',
        { 'plate.p1.temperature': T_case, 'supply.temperature': T_in, 'plate.p1.power': P },
        { design: { plateFullPowerW: P_full } },
      ),
  },
  rows: [
    {
      id: 'plates at 50 to 55 °C under full load',
      status: 'common-practice',
      source: `${trade}; R = 0.03 + 0.03 K/W, 35 °C water`,
      inputs: { T_case: 44, T_in: 35, P: 150, P_full: 300 },
      expected: 52.5,
      tolerance: absolute(2.5),
    },
    {
      id: 'plate of 0.06 K/W at 300 W',
      status: 'computed',
      source: 'by hand: 35 + (44 − 35) × 300/150',
      inputs: { T_case: 44, T_in: 35, P: 150, P_full: 300 },
      expected: 53,
      tolerance: absolute(1e-9),
    },
  ],
};

export const onFansTable: PublishedTable = {
  title: 'where chips settle on fans alone, °C',
  subject: { point: 'temperatureOnFans' },
  evaluate: (equation, { hall = 0, P = 0, R = 0 }) => equation(hall, P, R),
  onSite: {
    point: 'temperatureOnFans',
    evaluate: ({ hall = 0, P = 0, R = 0 }) =>
      onRichUnit(
        'temperatureOnFans',
        { 'hall.temperature': hall, 'plate.p1.power': P, 'plate.p2.power': P },
        { design: { fanPath: { resistanceKPerW: R } } },
      ),
  },
  rows: [
    {
      id: 'plates that peak near 77 °C on fans alone',
      status: 'common-practice',
      source: `${trade}; 27 °C hall, 300 W, 0.167 K/W`,
      inputs: { hall: 27, P: 300, R: 0.167 },
      expected: 77,
      tolerance: absolute(0.5),
    },
  ],
};

export const plateRangeTable: PublishedTable = {
  title: 'resistance of a cold plate of a large processor, K/W',
  subject: { point: 'plate.<id>.resistance' },
  evaluate: (equation, { T_case = 0, T_in = 0, P = 0 }) => equation(T_case, T_in, P),
  onSite: {
    point: 'plate.<id>.resistance',
    evaluate: ({ T_case = 0, T_in = 0, P = 0 }) =>
      onRichUnit('plate.p1.resistance', {
        'plate.p1.temperature': T_case,
        'supply.temperature': T_in,
        'plate.p1.power': P,
      }),
  },
  rows: [
    {
      id: 'coldplate-rth',
      status: 'common-practice',
      source: `${trade}; 0.01 to 0.05 K/W, a plate of 2 kW at 54 °C in 30 °C water`,
      inputs: { T_case: 54, T_in: 30, P: 2000 },
      expected: 0.03,
      tolerance: absolute(0.02),
    },
  ],
};

/** A square channel has its side as hydraulic diameter. */
export const reynoldsTable: PublishedTable = {
  title: 'Reynolds number in a channel',
  subject: { point: 'plate.<id>.channelReynolds' },
  evaluate: (equation, { v = 0, D = 0 }) => equation(v, D, 994.03, 0.7191e-3),
  onSite: {
    point: 'plate.<id>.channelReynolds',
    evaluate: ({ v = 0, D = 0, t = 0 }) =>
      onRichUnit(
        'plate.p1.channelReynolds',
        { ...ratedBranch, 'supply.temperature': t, 'return.temperature': t },
        {
          design: {
            plateChannel: {
              ratedFlowM3PerS: v * D * D,
              wettedAreaM2: null,
              wallResistanceKPerW: null,
              channel: { widthM: D, heightM: D, count: 1 },
            },
          },
        },
      ),
  },
  rows: [
    {
      id: 'darcy-50mm Re',
      status: 'published',
      source: 'water by IAPWS SR6-08, worked out by an independent library',
      inputs: { v: 0.42441, D: 0.05, t: 35 },
      expected: 29_335,
      tolerance: absolute(5),
    },
  ],
};
