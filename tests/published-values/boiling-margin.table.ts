import { boilingMargin } from '@ebbline/shared/hydraulics/pressure-margins';
import { nodeAtTank, onUnitM } from './on-unit-m';
import { absolute, type PublishedTable } from './published-table';

export const boilingMarginTable: PublishedTable = {
  title: 'boiling margin, kPa, at p kPa and t °C',
  subject: { point: 'boilingMargin' },
  evaluate: (equation, { p_min = Number.NaN, t = Number.NaN }) => equation(p_min * 1000, t) / 1000,
  onSite: {
    point: 'boilingMargin',
    evaluate: ({ p_min = Number.NaN, t = Number.NaN }) =>
      onUnitM(
        'boilingMargin',
        { 'separator.pressure': p_min * 1000, 'return.temperature': t },
        { nodes: nodeAtTank('return') },
      ) / 1000,
  },
  rows: [
    {
      id: 'boiling-margin margin',
      status: 'published',
      source: 'IAPWS R7-97 region 4',
      inputs: { p_min: 22.0, t: 50 },
      expected: 9.649,
      tolerance: absolute(0.001),
    },
  ],
};

export const lowerWallAtNodeTable: PublishedTable = {
  ...boilingMarginTable,
  title: 'lower wall by boiling at a node, kPa',
  subject: { equation: boilingMargin },
  onSite: {
    point: 'lowerWallMargin',
    evaluate: ({ p_min = Number.NaN, t = Number.NaN }) =>
      onUnitM(
        'lowerWallMargin',
        { 'separator.pressure': p_min * 1000, 'return.temperature': t },
        { nodes: nodeAtTank('return'), design: { npshLimitM: null } },
      ) / 1000,
  },
};

/** A plate that 600 W bring 30 K above its supply, at the separator's height; the return itself stays cool. */
export const lowerWallAtPlateTable: PublishedTable = {
  ...boilingMarginTable,
  title: 'lower wall by boiling at the wall of a plate, kPa',
  subject: { equation: boilingMargin },
  onSite: {
    point: 'lowerWallMargin',
    evaluate: ({ p_min = Number.NaN, t = Number.NaN }) =>
      onUnitM(
        'lowerWallMargin',
        {
          'separator.pressure': p_min * 1000,
          'supply.temperature': t - 30,
          'return.temperature': t - 20,
          'plate.p1.power': 600,
        },
        {
          nodes: nodeAtTank('return'),
          plates: [{ id: 'p1', branch: 0, elevationM: 1.2 }],
          design: { npshLimitM: null, plateWallResistanceKPerW: 0.05 },
        },
      ) / 1000,
  },
};
