import { onRichUnit } from './on-rich-unit';
import { absolute, type PublishedTable } from './published-table';

export const branchVacuumMarginTable: PublishedTable = {
  title: 'vacuum margin of a branch by its own sensor, kPa',
  subject: { point: 'branch.<id>.vacuumMargin' },
  evaluate: (equation, { p_amb = Number.NaN, p_branch = Number.NaN }) => equation(p_amb * 1000, p_branch * 1000) / 1000,
  onSite: {
    point: 'branch.<id>.vacuumMargin',
    evaluate: ({ p_amb = Number.NaN, p_branch = Number.NaN }) =>
      onRichUnit('branch.r1.vacuumMargin', {
        'ambient.pressure': p_amb * 1000,
        'branch.r1.return.pressure': p_branch * 1000,
      }) / 1000,
  },
  rows: [
    {
      id: 'trapped below ambient',
      status: 'computed',
      source:
        'ambient = ISO 2533 at 1500 m, 84.556 kPa; gauge pressure = absolute − ambient (ISO 80000-4, 4-14.2), sign turned',
      inputs: { p_amb: 84.556, p_branch: 60 },
      expected: 24.556,
      tolerance: absolute(1e-6),
    },
    {
      id: 'trapped above ambient',
      status: 'computed',
      source:
        'ambient = ISO 2533 at sea level, 101.325 kPa; gauge pressure = absolute − ambient (ISO 80000-4), sign turned',
      inputs: { p_amb: 101.325, p_branch: 111.325 },
      expected: -10,
      tolerance: absolute(1e-6),
    },
  ],
};
