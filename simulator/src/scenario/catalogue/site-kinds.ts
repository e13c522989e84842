import { sizeChoice, wholeSite, type ScenarioKind } from './scenario-kind';

/** What comes over the whole site. */
export const siteKinds: readonly ScenarioKind[] = [
  {
    id: 'deepLow',
    title: 'deep low',
    kind: 'fault',
    about: 'the barometer falls by 1.4, 2.8 or 4.2 kPa within twelve hours, at both halls',
    units: [wholeSite],
    needsBranch: false,
    choices: [sizeChoice],
  },
];
