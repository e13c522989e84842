import { localGravity } from '@ebbline/shared/fluid-properties/local-gravity';
import { absolute, type PublishedTable } from './published-table';

export const localGravityTable: PublishedTable = {
  title: 'normal gravity by latitude and height, m/s²',
  subject: { equation: localGravity },
  evaluate: (equation, { lat = Number.NaN, h = 0 }) => equation(lat, h),
  rows: [
    {
      id: 'local-g-45',
      status: 'published',
      source: 'GRS80/WGS84 normal gravity formula',
      inputs: { lat: 45, h: 0 },
      expected: 9.8062,
      tolerance: absolute(1e-5),
    },
  ],
};
