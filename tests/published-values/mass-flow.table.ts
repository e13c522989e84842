import { liquidWaterDensity } from '@ebbline/shared/fluid-properties/liquid-water';
import { celsius } from '@ebbline/shared/units/quantity';
import { onUnitM } from './on-unit-m';
import { absolute, type PublishedTable } from './published-table';

export const massFlowTable: PublishedTable = {
  title: 'mass flow, kg/s, of q_V m³/h at a meter at t °C',
  subject: { point: 'massFlow' },
  evaluate: (equation, { q_V = Number.NaN, t = Number.NaN }) => equation(liquidWaterDensity(celsius(t)), q_V / 3600),
  onSite: {
    point: 'massFlow',
    evaluate: ({ q_V = Number.NaN, t = Number.NaN }) =>
      onUnitM(
        'massFlow',
        { 'loop.flow': q_V / 3600, 'supply.temperature': 20, 'return.temperature': t },
        { flowMeterSide: 'return' },
      ),
  },
  rows: [
    {
      id: 'massflow-temp m',
      status: 'computed',
      source: 'IAPWS SR6-08 densities (computed)',
      inputs: { q_V: 40.0, t: 45 },
      expected: 11.0024,
      tolerance: absolute(0.0002),
    },
    {
      id: 'massflow-temp m_wrong',
      status: 'computed',
      source: 'IAPWS SR6-08 densities (computed)',
      inputs: { q_V: 40.0, t: 30 },
      expected: 11.0628,
      tolerance: absolute(0.0002),
    },
  ],
};

export const massFlowAtSupplyTable: PublishedTable = {
  ...massFlowTable,
  title: 'mass flow, kg/s, with the meter in the supply',
  onSite: {
    point: 'massFlow',
    evaluate: ({ q_V = Number.NaN, t = Number.NaN }) =>
      onUnitM('massFlow', { 'loop.flow': q_V / 3600, 'supply.temperature': t, 'return.temperature': 60 }),
  },
};
