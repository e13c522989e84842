/** Alarms under the same rules for drill, review and change (ANSI/ISA-18.2-2016, classification). */
export type AlarmClass =
  | 'water'
  | 'vacuum'
  | 'air'
  | 'flow'
  | 'heat'
  | 'condensation'
  | 'levels'
  | 'machines'
  | 'work'
  | 'waterQuality'
  | 'wear'
  | 'instruments'
  | 'program';

export interface ClassRules {
  readonly title: string;
  /** Highly managed: each change is approved, each action drilled, and reviewed every year. */
  readonly highlyManaged: boolean;
  /** Who answers for it, by trade; the authorised list of a site names the one there. */
  readonly owner: string;
  /** How long after the approval of the list it is to be looked at again, months. */
  readonly reviewMonths: 12 | 24;
}

const managed = (title: string, owner: string): ClassRules => ({
  title,
  highlyManaged: true,
  owner,
  reviewMonths: 12,
});
const usual = (title: string, owner: string): ClassRules => ({
  title,
  highlyManaged: false,
  owner,
  reviewMonths: 24,
});

const cooling = 'Cooling engineer';
const maintenance = 'Maintenance';
const controls = 'Controls engineer';

/** Rules and owners are proposals of this project. Highly managed is what ends in water near live equipment or in all flow lost. */
export const alarmClasses: Readonly<Record<AlarmClass, ClassRules>> = {
  water: managed('Water found', cooling),
  vacuum: managed('Vacuum margin', cooling),
  air: managed('Air coming in', cooling),
  flow: managed('Flow', cooling),
  heat: usual('Temperatures and facility water', cooling),
  condensation: usual('Condensation', cooling),
  levels: usual('Water levels', cooling),
  machines: usual('Pumps, vacuum sources and valves', maintenance),
  work: managed('Work on the loop', 'Permit office'),
  waterQuality: usual('Quality of the water', 'Water treatment'),
  wear: usual('Wear and fouling', maintenance),
  instruments: usual('Instruments', controls),
  program: usual('Ebbline itself', 'Administrator of Ebbline'),
};
