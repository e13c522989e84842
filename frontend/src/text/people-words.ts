import type { Right, Role, SessionState } from '@ebbline/shared/contract/people';

export const roleWords: { readonly [R in Role]: string } = {
  viewer: 'viewer',
  operator: 'operator',
  engineer: 'engineer',
  admin: 'admin',
};

/** What a role is for, where one is chosen. */
export const roleTexts: { readonly [R in Role]: string } = {
  viewer: 'looks at everything, changes nothing; may stay signed in on a wall',
  operator: 'also acknowledges and shelves, opens and closes permits, enters values, runs tests and tries limits',
  engineer: 'also changes limits, takes alarms out of service, reads the site file anew, and who did what',
  admin: 'also says who may come in',
};

export const rightTexts: { readonly [R in Right]: string } = {
  look: 'look at all values and alarms',
  acknowledge: 'acknowledge and reset alarms',
  permit: 'open and close permits',
  measure: 'enter values by hand, start and end pressure-rise tests',
  shelve: 'shelve alarms for a time, and end it',
  note: 'write notes, hand a shift over and take one over',
  tryLimits: 'try a limit over what was recorded',
  changeSite: 'check a site file and read it anew',
  changeLimits: 'change limits, delays and deadbands while the program runs',
  outOfService: 'take alarms out of service and return them',
  commandDemo: 'start and repair faults of the demo',
  readAudit: 'read who signed in and what was refused',
  managePeople: 'say who may come in',
};

type By = NonNullable<SessionState['person']>['by'];
export const entryWords: { readonly [B in By]: string } = {
  password: 'by a password',
  openId: 'by another provider',
  demo: 'by name alone, on the demo site',
  token: 'by a token',
};
