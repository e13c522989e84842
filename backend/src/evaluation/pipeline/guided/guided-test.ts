import type { GuidedQuantity } from '@ebbline/shared/contract/guided-quantity';
import type { GuidedAsked, GuidedFault, GuidedKind, GuidedResult } from '@ebbline/shared/contract/guided-test';
import type { GuidedView } from './guided-view';
import type { StepRecord } from './guided-record';

/** One kind of guided test. All of it is pure: what it reads comes by `GuidedView`. */
export interface GuidedTestKind {
  readonly kind: GuidedKind;
  readonly title: string;
  readonly about: string;
  /** When it counts as steady, and whose rule that is. */
  readonly criterion: string;
  /** What may hurt someone beside what every test warns of. */
  readonly cautions: readonly string[];
  /** What is chosen before the start. */
  readonly asks: readonly GuidedAsked[];
  /** What can be chosen for the texts that are asked, by their keys; left out: any words. */
  readonly choices?: (view: GuidedView) => Readonly<Record<string, readonly Choice[]>>;
  /** What has to hold from the start to the end, first what the site file lacks. */
  readonly gates: readonly Gate[];
  /** What has to hold at the start alone, as the test itself changes it; left out: nothing. */
  readonly startGates?: readonly Gate[];
  /** So long a gate may be shut while it measures, ms; left out: five seconds. */
  readonly graceMs?: number;
  /** The gates are looked at each second while a person is asked too; left out: at each confirmation. */
  readonly watchedWhileAsked?: boolean;
  /** Where it is broken off, what `judge` makes of the steps that are done is told without a verdict; left out: their readings alone. */
  readonly tellsWhatIsWhole?: boolean;
  /** What people have to see to where it does not go through; left out: nothing. */
  readonly afterBreak?: string;
  /** What is wrong with what was chosen, beside the single bounds; left out: nothing can be. */
  readonly settingFault?: (view: GuidedView, operator: string) => string | null;
  /** Entries of the alarm list that stand in the state which the test needs: they break nothing off. */
  readonly expectedAlarms: readonly string[];
  /** Points whose accuracy goes into the record. */
  points(view: GuidedView): readonly string[];
  /** Behind the first step, with the cautions, which every test has. */
  steps(view: GuidedView): readonly StepPlan[];
  judge(view: GuidedView, steps: readonly StepRecord[]): GuidedResult;
}

export interface Choice {
  readonly value: string;
  readonly name: string;
}

/** Says what is in the way, with what to do; null where nothing is. */
export interface Gate {
  readonly code: GuidedFault;
  readonly shut: (view: GuidedView) => string | null;
}

export type StepPlan = ConfirmPlan | MeasurePlan;

export interface ConfirmPlan {
  readonly kind: 'confirm';
  readonly id: string;
  readonly title: string;
  readonly text: string;
  readonly asks?: readonly GuidedAsked[];
  /** Why it is not for this person to confirm; null where it is. Left out: whoever may measure. */
  readonly notFor?: (view: GuidedView, operator: string) => string | null;
}

export interface MeasurePlan {
  readonly kind: 'measure';
  readonly id: string;
  readonly title: string;
  readonly text: string;
  /** Means are made over so long, s. */
  readonly blockS: number;
  /** The newest so many seconds have to be steady. */
  readonly windowS: number;
  /** It takes at least so long, and is given up after so long, s. */
  readonly leastS: number;
  readonly mostS: number;
  readonly readings: readonly ReadingPlan[];
  /** What has to have happened besides; left out: nothing. */
  readonly until?: (view: GuidedView) => boolean;
}

export interface ReadingPlan {
  readonly reading: string;
  readonly title: string;
  readonly quantity: GuidedQuantity;
  readonly read: (view: GuidedView) => number;
  /** The interval of its drift over the window has to lie within ± this, in its unit; null: may do as it likes. */
  readonly allowedDrift: number | null;
}
