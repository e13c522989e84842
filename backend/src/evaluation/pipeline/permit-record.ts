import type { PermitFault } from '@ebbline/shared/contract/permit';

/** A permit as the judge keeps it and as the journal restores it. Plain JSON; never changed in place. */
export interface PermitRecord {
  readonly id: string;
  readonly unit: string;
  readonly branch: string | null;
  readonly openedBy: string;
  readonly station: string;
  readonly openedMs: number;
  readonly untilMs: number;
  readonly expectedInLeakM3PerS: number;
  readonly comment: string;
  /** What stood before the work began; back there (within its tolerance) the permit closes. NaN is kept as null. */
  readonly baseline: {
    readonly branchFlowM3PerS: number | null;
    readonly gasLoadM3PerS: number | null;
    readonly waterVolumeM3: number | null;
  };
  /** `isolation`: that the branch is part of the loop again. */
  readonly waitsFor: readonly ('branchFlow' | 'gasLoad' | 'level' | 'isolation')[];
  readonly closedBy: string | null;
  readonly closedMs: number | null;
  /** That its time is over was told: a restart does not tell it anew. */
  readonly isOverdueTold?: true;
}

export interface OpenPermit {
  readonly kind: 'openPermit';
  readonly unit: string;
  readonly branch: string | null;
  readonly untilMs: number;
  readonly expectedInLeakM3PerS: number;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}

export interface ClosePermit {
  readonly kind: 'closePermit';
  readonly permit: string;
  readonly operator: string;
  readonly station: string;
  readonly comment: string;
}

export type PermitAction = OpenPermit | ClosePermit;

/** A change of a permit that the journal must commit; `actor` null: the program closed it. */
export interface PermitChange {
  readonly what: 'opened' | 'closed' | 'overdue' | 'moved';
  readonly permit: PermitRecord;
  readonly atMs: number;
  readonly actor: string | null;
  readonly station: string | null;
  readonly comment: string | null;
}

export type PermitOutcome =
  | { readonly ok: true; readonly change: PermitChange }
  | { readonly ok: false; readonly code: PermitFault | 'ACTION_NOT_RECORDED'; readonly message: string };
