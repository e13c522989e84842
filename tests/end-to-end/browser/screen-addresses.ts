import { readFile } from 'node:fs/promises';

/** An address of the router, how to know that its screen is there, and what it says where no unit ever sent anything. */
export interface ScreenAddress {
  /** Name of the route. */
  readonly route: string;
  readonly path: string;
  /** Shown once the screen has what it shows, in a hall that sends. */
  readonly shown: string;
  /** In the words of the screen while nothing was ever sent; null where it speaks of nothing that units send. */
  readonly silent: RegExp | null;
}

const byId = (id: string): string => `[data-testid="${id}"]`;

/** Before anything came. */
const longAgo = '2020-01-01T00:00:00Z';

/** Every address of the router, for the small test site; `tightnessTest`: the id of a pressure-rise test of its unit m1. */
export const screenAddresses = (tightnessTest: string): readonly ScreenAddress[] => [
  {
    route: 'performance',
    path: '/performance?days=1',
    shown: byId('too-short'),
    silent: /Nothing was told in this time|told (once|\d+ times)/,
  },
  { route: 'alarms', path: '/alarms', shown: byId('alarm-m1:WATER-1'), silent: /nothing has come from 2 units/ },
  { route: 'hall', path: '/halls/north', shown: byId('strip-m1-bar'), silent: /without a fresh margin/ },
  {
    route: 'past-hall',
    path: `/halls/north/past?at=${longAgo}`,
    shown: '.problem button',
    silent: /Nothing was recorded here at or before/,
  },
  {
    route: 'past-loop',
    path: `/units/m1/past?at=${longAgo}`,
    shown: '.problem button',
    silent: /Nothing was recorded here at or before/,
  },
  {
    route: 'loop',
    path: '/units/m1',
    shown: byId('alarm-m1:WATER-1'),
    silent: /never received/,
  },
  {
    route: 'loop',
    path: '/units/m1?value=vacuumMargin',
    shown: byId('value-uncertainty'),
    silent: /never received/,
  },
  { route: 'at-unit', path: '/units/m1/at-unit', shown: 'main h1', silent: /never received/ },
  {
    route: 'tightness-record',
    path: `/units/m1/tightness-tests/${tightnessTest}`,
    shown: 'main h1',
    silent: null,
  },
  { route: 'guided-tests', path: '/guided-tests', shown: byId('guided-survey'), silent: /in the way/ },
  {
    route: 'guided-test',
    path: '/units/m1/guided-tests/zeroCheck',
    shown: byId('guided-offer'),
    silent: /It can’t begin now/,
  },
  { route: 'alarms-set-aside', path: '/alarms/set-aside', shown: byId('set-aside-count'), silent: null },
  { route: 'alarms-journal', path: '/alarms/journal', shown: byId('journal-rows'), silent: null },
  { route: 'limits', path: '/limits', shown: byId('limit-MARGIN-1'), silent: null },
  {
    route: 'limits',
    path: '/limits/MARGIN-1?unit=m1&propose=limit:4000',
    shown: byId('set-site'),
    silent: null,
  },
  {
    route: 'trends',
    path: '/trends?points=m1:vacuumMargin,m1:supply.temperature&last=900',
    shown: '.lane-chart canvas',
    silent: /Nothing measured in this period/,
  },
  { route: 'energy', path: '/energy?unit=m1', shown: byId('together-heatRemoved'), silent: /nothing was measured/i },
  { route: 'report', path: '/report?hall=north', shown: byId('stood-m1:WATER-1'), silent: /nothing measured/ },
  { route: 'setup', path: '/setup', shown: byId('tokens'), silent: /22 never came/ },
  { route: 'setup', path: '/setup/m1', shown: 'main h1', silent: /22 never came/ },
  { route: 'signs', path: '/signs', shown: 'main h1', silent: null },
  { route: 'sign-in', path: '/sign-in', shown: byId('sign-in'), silent: null },
  { route: 'set-up', path: '/set-up#none', shown: 'main h1', silent: null },
  { route: 'account', path: '/account', shown: byId('account'), silent: null },
];

const routerFile = new URL('../../../frontend/src/router.ts', import.meta.url);

/** Names of all routes in the text of the router's table; a route that leads elsewhere or only holds others has none. */
export const routesIn = (router: string): readonly string[] =>
  [...router.matchAll(/\bname: '([\w-]+)'/g)].map(([, name]) => name ?? '');

/** Routes of the program that no row here takes. */
export async function routesWithoutAddress(
  rows: readonly ScreenAddress[],
  router: string | null = null,
): Promise<readonly string[]> {
  const text = router ?? (await readFile(routerFile, 'utf8'));
  return routesIn(text).filter((name) => !rows.some(({ route }) => route === name));
}
