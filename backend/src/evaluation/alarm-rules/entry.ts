import type { Mode } from '@ebbline/shared/contract/http-api';
import type { CompiledUnit, PlantShape } from '../site/compiled-site';
import type { EntryId, GroupEntryId, SystemEntryId, UnitEntryId } from './entry-ids';
import type { Finding } from './finding';
import type { GroupContext } from './group-context';
import type { UnitContext } from './judge-context';
import type { Severity } from './priority';
import type { SystemState } from './system-state';
import type { UnitSlots } from './unit-slots';

/** Why an alarm exists: what ANSI/ISA-18.2-2016 and ISA-TR18.2.2-2016 ask of a rationalized alarm. */
export interface Rationale<Id extends EntryId = EntryId> {
  readonly id: Id;
  readonly title: string;
  readonly cause: string;
  /** What happens if nobody acts. */
  readonly consequence: string;
  /** What to do first, by plant shape. A site may put its own procedure in place of it. */
  readonly action: Readonly<Record<PlantShape, string>>;
  /** How a person makes sure that it is so. */
  readonly confirm: string;
  readonly timeToRespondS: number;
  readonly severity: Severity;
  /** The same alarm with signs that make it worse. */
  readonly worse: { readonly severity: Severity; readonly timeToRespondS: number; readonly when: string } | null;
  readonly latching: boolean;
  readonly defaults: Limits;
  /** UCUM code of value and limit as shown with the alarm. */
  readonly unitOfMeasure: string | null;
  /** What the default limit rests on. */
  readonly basis: string;
}

/** SI. A site file may change each (`EntryLimits`). */
export interface Limits {
  readonly limit: number;
  /** Lower end of the band, of entries that have one; NaN: that side is not judged. */
  readonly low?: number;
  readonly deadband: number;
  readonly onDelayMs: number;
  readonly offDelayMs: number;
  /** How long after it was acknowledged the alarm is told anew while its condition lasts; absent: not at all. */
  readonly reAlarmAfterMs?: number | undefined;
}

/** Parts of a unit that an entry may be judged for, one by one. */
export type PartKind = 'branch' | 'plate';

/** An entry that is judged once a unit and second, or once for each of its parts. */
export interface UnitEntry extends Rationale<UnitEntryId> {
  /** Absent: once a unit. Else for each part, whose index is `context.part`. */
  readonly per?: PartKind;
  /** Measured points whose loss blinds it, as patterns of the point table; hall points too. */
  readonly feeds: readonly string[];
  /** Modes in which the condition is normal. Empty: never suppressed by mode. */
  readonly offInModes: readonly Mode[];
  /** Also off where the mode is only inferred from running feedback. */
  readonly offWhenInferred: boolean;
  /** The rule may put a time to respond into its finding: the priority then follows from that. */
  readonly computedTime?: true;
  /** False where the unit lacks what is needed: then it has no such alarm, and costs nothing. */
  applies?(unit: CompiledUnit, slots: UnitSlots, part: number): boolean;
  readonly judge: (context: UnitContext, limits: Limits, active: boolean, finding: Finding) => void;
  /** What is known of this very case, in a sentence or two. Asked when the alarm is raised, and whenever it is shown. */
  detail?(context: UnitContext): string | null;
}

/** An entry that is judged once a second for a loop or a hall. */
export interface GroupEntry extends Rationale<GroupEntryId> {
  readonly per: 'loop' | 'hall';
  readonly feeds: readonly string[];
  judge(context: GroupContext, limits: Limits, active: boolean, finding: Finding): void;
  detail?(context: GroupContext): string | null;
}

/** An entry that is judged once a second about this program itself, whatever the plant is. */
export interface SystemEntry extends Rationale<SystemEntryId> {
  judge(state: SystemState, limits: Limits, active: boolean, finding: Finding): void;
  detail(state: SystemState): string | null;
}

export const everyShape = (text: string): Readonly<Record<PlantShape, string>> => ({ a: text, b: text, c: text });
