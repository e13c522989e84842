import type { CompiledHall, CompiledSite, CompiledUnit } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import type { SiteFigureKey } from './site-figures';
import type { BudgetHolder } from './uncertainty-budget';
import type { UnitFrame } from './unit-frame';
import type { UnitPlan } from './unit-plan';

/** What a person reads of a derived point. */
export interface DerivedPointText {
  /** Patterns of the points that it is worked out from; `a or b` where the unit's first one counts (`slotsOfInput`). */
  readonly inputs: readonly string[];
  /** Keys of the site file that it is worked out from. */
  readonly siteFigures?: readonly SiteFigureKey[];
  /** The equation as a person reads it, in the field's usual symbols: `Q = ρ·q·c_p·(T_return − T_supply)`. */
  readonly formula: string;
  /** Where the equation stands: standard and clause, book and equation, or `own rule`. */
  readonly source: string;
  /** What a site chose besides, such as a table: follows the source. */
  readonly choice?: (unit: CompiledUnit) => string;
}

interface DerivedPointBase extends DerivedPointText {
  readonly id: string;
  /** UCUM code. */
  readonly unit: string;
  /** The equation from `shared` behind the value. The tables of published values call this very function. */
  readonly equation: (...inputs: never[]) => number;
}

/** `derive` takes the inputs with their quality from the slots and writes value, quality, age, uncertainty and where. */
export interface DerivedPointOfUnit extends DerivedPointBase {
  readonly derive: (frame: UnitFrame) => void;
  /** Whether the unit has what the point is worked out from; left out: it is always worked out, and says itself. */
  readonly applies?: (plan: UnitPlan) => boolean;
  /** Whether the site file sets what the point takes besides. Left out: it takes nothing that a person has to set. */
  readonly isSet?: (plan: UnitPlan) => boolean;
  /** The one derived point that it watches: where the unit can't have that one, setting a key would help nothing. */
  readonly watches?: string;
}

export interface DerivedPointOfHall extends DerivedPointBase {
  readonly derive: (
    site: CompiledSite,
    state: SlotState,
    hall: CompiledHall,
    nowMs: number,
    asked?: BudgetHolder,
  ) => void;
}
