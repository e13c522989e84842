import type { AlarmMode } from '@ebbline/shared/contract/alarm-modes';

/** How and why an alarm is set aside; an alarm in service has none of it, nor has a record from before there were modes. */
export interface ModeFacts {
  /** Absent: in service. */
  readonly mode?: AlarmMode;
  /** Since when it is in this mode, tick time, ms. */
  readonly modeSinceMs?: number;
  /** Shelved: when it ends by itself; out of service: when it is meant to end; null: not said. Tick time, ms. */
  readonly modeUntilMs?: number | null;
  /** Null: by design. */
  readonly modeBy?: string | null;
  readonly modeReason?: string;
  /** Out of service: what watches the plant meanwhile. */
  readonly interimMeasures?: string | null;
}

/** All of it, as an alarm that is set aside has it. */
export type SetAside = { readonly [K in keyof ModeFacts]-?: Exclude<ModeFacts[K], undefined> };

export const modeOf = ({ mode }: ModeFacts): AlarmMode => mode ?? 'inService';

export const isSetAside = (facts: ModeFacts): boolean => modeOf(facts) !== 'inService';

/** What the facts say of being set aside; null where the alarm is in service. */
export function setAsideOf(facts: ModeFacts & { readonly stateSinceMs?: number }): SetAside | null {
  if (!isSetAside(facts)) return null;
  return {
    mode: modeOf(facts),
    modeSinceMs: facts.modeSinceMs ?? facts.stateSinceMs ?? Number.NaN,
    modeUntilMs: facts.modeUntilMs ?? null,
    modeBy: facts.modeBy ?? null,
    modeReason: facts.modeReason ?? '',
    interimMeasures: facts.interimMeasures ?? null,
  };
}

const ofMode: ReadonlySet<string> = new Set<keyof ModeFacts>([
  'mode',
  'modeSinceMs',
  'modeUntilMs',
  'modeBy',
  'modeReason',
  'interimMeasures',
]);

/** The same in service: without a word of its mode. */
export const inService = <Facts extends ModeFacts>(facts: Facts): Facts =>
  Object.fromEntries(Object.entries(facts).filter(([member]) => !ofMode.has(member))) as Facts;
