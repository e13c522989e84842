import type { Mutant } from './mutant';

const access = ['unit/backend/access'];

/** Who may do what, for how long, and how guessing is slowed down. */
export const mutantsOfAccess: readonly Mutant[] = [
  {
    id: 'viewer-acknowledges',
    file: 'backend/src/access/rights-of-role.ts',
    text: "const viewer: readonly Right[] = ['look'];",
    becomes: "const viewer: readonly Right[] = ['look', 'acknowledge'];",
    why: 'whoever only looks on could take an alarm away from those who act',
    tests: access,
  },
  {
    id: 'session-never-idles',
    file: 'backend/src/access/session-times.ts',
    text: 'idleEndsAfterMs: 60 * minuteMs',
    becomes: 'idleEndsAfterMs: null',
    why: 'a screen that someone left would act under their name for the rest of the shift',
    tests: access,
  },
  {
    id: 'wait-forgiven-in-flight',
    file: 'backend/src/access/sign-in-back-off.ts',
    text: 'return inFlight < Math.max(1, backOffRules.free - failures) ? 0 : judgedWithinMs;',
    becomes: 'return 0;',
    why: 'a hundred passwords sent at once would all be judged before the first failure counts',
    tests: access,
  },
  {
    id: 'unseen-characters-make-a-name',
    file: 'backend/src/access/name-key.ts',
    text: '/(?!\\s)[\\p{Cc}\\p{Cf}\\p{Co}\\p{Cs}\\p{Cn}]/gu',
    becomes: '/(?!\\s)[\\p{Cc}]/gu',
    why: 'a second person could be told apart from the first by no eye',
    tests: access,
  },
];
