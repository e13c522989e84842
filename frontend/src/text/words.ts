import type { AlarmState, Priority } from '@ebbline/shared/contract/alarm';
import type { Mode } from '@ebbline/shared/contract/http-api';
import { modes } from '@ebbline/shared/contract/http-api';
import type { BranchShare, LowerWallKind } from '@ebbline/shared/contract/live-feed';
import type { Permit, PermitState } from '@ebbline/shared/contract/permit';
import { type Quality, qualityOfReason, type QualityReason } from '@ebbline/shared/contract/reading';
import type { UnitSystem } from './unit-system';

/** As they stand where one chooses between them. */
export const unitSystemWords: { readonly [S in UnitSystem]: string } = {
  metric: 'metric: kPa, °C, L/min',
  us: 'US: psi, °F, gpm',
};

export const priorityWords: { readonly [P in Priority]: string } = {
  1: 'act now',
  2: 'act soon',
  3: 'look into it',
};

export const alarmStateWords: { readonly [S in AlarmState]: string } = {
  normal: 'normal',
  unacknowledged: 'not acknowledged',
  acknowledged: 'acknowledged',
  returnedUnacknowledged: 'condition gone, not acknowledged',
  latchedUnacknowledged: 'condition gone, latched, not acknowledged',
  latchedAcknowledged: 'condition gone, latched, acknowledged',
};

export const modeWords: { readonly [M in Mode]: string } = {
  off: 'off',
  vented: 'vented, not protected',
  tightnessTest: 'tightness test',
  filling: 'filling',
  purging: 'purging',
  starting: 'starting',
  running: 'running',
  standby: 'standby under vacuum',
  stopping: 'stopping',
  draining: 'draining',
  service: 'service on a branch',
  powerReturn: 'power return',
};

/** The word of a mode sent as a number, by its place in the contract's list. */
export function modeWord(index: number): string {
  const mode = modes[index];
  return mode === undefined ? 'not known' : modeWords[mode];
}

export const lowerWallWords: { readonly [K in LowerWallKind]: string } = {
  node: 'boils',
  pumpInlet: 'pump inlet',
  plateWall: 'plate wall',
};

/** The same walls where a sentence or a label names them. */
export const lowerWallNouns: { readonly [K in LowerWallKind]: string } = {
  node: 'boiling',
  pumpInlet: 'pump inlet limit',
  plateWall: 'boiling at a plate wall',
};

export const branchStateWords: { readonly [S in BranchShare['state']]: string } = {
  inLoop: 'in the loop',
  isolated: 'isolated: its trapped water is not protected',
  openUnderPermit: 'open under a permit',
};

export const permitStateWords: { readonly [S in PermitState]: string } = {
  open: 'open',
  overdue: 'overdue',
  closed: 'closed',
};

/** What a permit waits for before it closes by itself. */
export const permitWaitWords: { readonly [W in Permit['waitsFor'][number]]: string } = {
  branchFlow: 'branch flow',
  gasLoad: 'gas load',
  level: 'level',
  isolation: 'branch not isolated',
};

export const qualityWords: { readonly [Q in Quality]: string } = { good: 'good', uncertain: 'uncertain', bad: 'bad' };

export const reasonWords: { readonly [R in QualityReason]: string } = {
  notReceived: 'never received',
  stale: 'no new value in time',
  ageUnknown: 'age not known',
  outOfRange: 'outside what the sensor can give',
  stuck: 'not moving although it should',
  jump: 'moved faster than it can',
  senderFlag: 'flagged by its sender',
  ambientEstimated: 'ambient estimated from altitude',
  inputBad: 'an input is bad',
  inputUncertain: 'an input is uncertain',
  undefined: 'a difference, flow or power is smaller than its uncertainty allows',
  notApplicable: 'does not apply now',
  warming: 'not watched long enough yet',
  contradicted: 'its inputs contradict each other',
  overdue: 'typed so long ago that the next is due',
  notSet: 'not set: the site file states no knownGood period for this unit (key units.<unit>.knownGood)',
  notRecorded: 'not recorded then',
  uncertainThen: 'recorded as such, without why',
  badThen: 'recorded so, without why',
};

/** Every reason in words, or a word for none. */
export function sayReasons(reasons: readonly QualityReason[]): string {
  return reasons.map((reason) => reasonWords[reason]).join('; ');
}

/** Why something is bad: what only makes it uncertain is not what is wrong with it. */
export function sayWhyBad(reasons: readonly QualityReason[]): string {
  return sayReasons(reasons.filter((reason) => qualityOfReason[reason] === 'bad')) || sayReasons(reasons);
}

export const noValue = 'no value';

export const safetyLine =
  'Ebbline monitors. It is no safety system: follow local codes, the maker’s instructions and licensed practice.';
