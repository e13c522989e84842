import { parseRfc3339 } from '../../backend/src/evaluation/decode/rfc3339';
import { absolute, type PublishedRow, type PublishedTable } from './published-table';

const examples = [
  '1985-04-12T23:20:50.52Z',
  '1996-12-19T16:39:57-08:00',
  '1990-12-31T23:59:60Z',
  '1937-01-01T12:00:27.87+00:20',
];
const row = (id: string, which: number, expected: number, source: string): PublishedRow => ({
  id,
  status: 'published',
  source: `RFC 3339, section 5.8${source}`,
  inputs: { which },
  expected,
  tolerance: absolute(0.1),
});

export const timesTable: PublishedTable = {
  title: 'instants of RFC 3339, ms since 1970 UTC',
  subject: { equation: parseRfc3339 as unknown as (...inputs: never[]) => number },
  evaluate: (_, { which = 0 }) => parseRfc3339(examples[which] ?? ''),
  rows: [
    row('rfc3339-a', 0, 482_196_050_520, ''),
    row('rfc3339-b', 1, 851_042_397_000, ': the same instant as 1996-12-20T00:39:57Z'),
    row('rfc3339-leap', 2, 662_688_000_000, ': valid; POSIX counts the leap second as the second after it'),
    row('rfc3339-offset', 3, -1_041_337_172_130, ': valid; 20 minutes after 11:40:27.87Z'),
  ],
};
