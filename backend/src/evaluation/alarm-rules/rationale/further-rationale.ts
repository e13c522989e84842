import type { QuantityKind } from '@ebbline/shared/contract/quantity-kind';
import type { AlarmClass } from './alarm-classes';

/** What the alarm looks at (alarm types of ISA-TR18.2.2-2016); `calculated`: a figure that no sensor measures. */
export type AlarmType = 'absolute' | 'deviation' | 'rate' | 'discrete' | 'instrument' | 'calculated';

/** What a rationalized alarm holds beside what stands with its rule (`Rationale`). The table has each entry, or it does not compile. */
export interface FurtherRationale {
  readonly type: AlarmType;
  readonly class: AlarmClass;
  /** What the plant itself can't go beyond, behind the limit; null: the limit rests on nothing of the plant. */
  readonly designLimit: string | null;
  /** What the first action takes somebody who knows it, from reading to done, s. Estimates of this project; a site proves its own by drill. */
  readonly timeNeededS: number;
  /** In which modes or under which circumstances the limit is another one; null: never. */
  readonly stateDependent: string | null;
  readonly setting: SettingKind;
}

/** What may be set of an entry while the program runs. */
export interface SettingKind {
  /** What its limit is; null: it has none that could be set. */
  readonly limit: QuantityKind | null;
  /** On which side of the limit the alarm stands; `band`: outside its two ends; `ends`: below the low end of one thing, above the limit of another. */
  readonly side: 'above' | 'below' | 'band' | 'ends' | null;
  /** False: no rule looks at a deadband, so that none can be set. */
  readonly deadband: boolean;
  /** What a sound plant reads where that is always the same: limit and deadband stay on the alarm's side of it. */
  readonly sound: number | null;
  /** False: judged by rules of the program itself, which no setting reaches. */
  readonly changeable: boolean;
}

const kind =
  (side: 'above' | 'below') =>
  (limit: QuantityKind, sound: number | null = null): SettingKind => ({
    limit,
    side,
    deadband: true,
    sound,
    changeable: true,
  });

export const above = kind('above');
export const below = kind('below');
/** It ends by what its rule sees, not by a way back from the limit. */
export const withoutDeadband = (of: SettingKind): SettingKind => ({ ...of, deadband: false });
export const within = (limit: QuantityKind, side: 'band' | 'ends' = 'band'): SettingKind => ({
  limit,
  side,
  deadband: true,
  sound: null,
  changeable: true,
});
/** Yes or no, or a limit that comes from elsewhere: only delays can be set, and whether it is judged. */
export const delaysOnly: SettingKind = {
  limit: null,
  side: null,
  deadband: false,
  sound: null,
  changeable: true,
};
export const fixed: SettingKind = { ...delaysOnly, changeable: false };
