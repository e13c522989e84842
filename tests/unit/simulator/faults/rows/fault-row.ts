import type { FaultOrder, FaultSize } from '../../../../../simulator/src/faults/fault';
import type { UnitKind } from '../../../../../simulator/src/plant/plant-parameters';

/** Beyond 5 σ of its sensor's noise, first in this direction, within so many seconds. */
export interface Move {
  readonly way: 'up' | 'down';
  readonly withinS: number;
}

type Order = Partial<FaultOrder> & Pick<FaultOrder, 'fault'>;

/** What a fault must move and must not move, on every unit type and in every size unless the row says fewer. */
export interface FaultRow {
  readonly order: Omit<Order, 'size'>;
  readonly kinds?: readonly UnitKind[];
  readonly sizes?: readonly FaultSize[];
  /** Faults that stand in the plant before this one begins, and settled; or begin with it. */
  readonly standing?: readonly Order[];
  readonly together?: readonly Order[];
  readonly runS: number;
  /** Point → how. `r1` is the rack of the fault, plate and server `r1b` those that it strikes. */
  readonly moves: Readonly<Record<string, Move>>;
  /** Point → how far it may go, in units of the reading; 0: not beyond 5 σ. */
  readonly stays: Readonly<Record<string, number>>;
  /** Why: common practice and arithmetic where nothing else is said; no published source. */
  readonly because: string;
}

export const up = (withinS: number): Move => ({ way: 'up', withinS });
export const down = (withinS: number): Move => ({ way: 'down', withinS });

/** Points that have to stay where they are, within 5 σ. */
export const still = (...points: string[]): Record<string, number> =>
  Object.fromEntries(points.map((point) => [point, 0]));

export const litrePerMin = 1 / 60000;
