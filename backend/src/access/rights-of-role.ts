import type { Right, Role } from '@ebbline/shared/contract/people';

const viewer: readonly Right[] = ['look'];
const operator: readonly Right[] = [...viewer, 'acknowledge', 'permit', 'measure', 'shelve', 'note', 'tryLimits'];
const engineer: readonly Right[] = [
  ...operator,
  'changeSite',
  'changeLimits',
  'outOfService',
  'commandDemo',
  'readAudit',
];
const admin: readonly Right[] = [...engineer, 'managePeople'];

/** Which role may do what; the one place that says it. */
export const rightsOfRole: Readonly<Record<Role, readonly Right[]>> = { viewer, operator, engineer, admin };
