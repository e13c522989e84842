import { routeTable } from '@ebbline/shared/contract/route-table';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { addressesBeside, routeTemplate } from '../../../../../backend/src/connections/http-api/route-template';

const known: ReadonlySet<string> = new Set([
  ...routeTable.map(({ path }) => path),
  ...addressesBeside,
  'screens',
  'unknown',
]);

it.each([
  ['/api/units/N3/points', '/api/units/{unit}/points'],
  ['/api/alarms/m1%3AAIR-1/acknowledge', '/api/alarms/{id}/acknowledge'],
  ['/api/alarms/journal', '/api/alarms/journal'],
  ['/api/metrics', '/api/metrics'],
  ['/api/health/', '/api/health'],
  ['/api/nowhere', 'unknown'],
  ['/assets/index.js', 'screens'],
])('%s is counted as %s', (path, template) => {
  expect(routeTemplate(path)).toBe(template);
});

it('whatever is asked for is counted under one of a few names', () => {
  const path = fc.oneof(
    fc.webPath(),
    fc.string(),
    fc.string().map((word) => `/api/units/${word}/points`),
  );
  fc.assert(fc.property(path, (asked) => known.has(routeTemplate(asked))));
  fc.assert(fc.property(path, (asked) => known.has(routeTemplate(`/api/${asked}`))));
});
