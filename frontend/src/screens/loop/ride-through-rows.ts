/** The clocks, with what is said where one does not run out, and where it can't be worked out: nobody knows then that it does not run out. */
export const rideThroughRows: readonly (readonly [point: string, label: string, never: string, unknown: string])[] = [
  ['rideThroughFlow', 'stored water flows on for', 'not held by stored water', 'stored water: not known of this unit'],
  ['rideThroughPlate', 'a plate is at its limit after', 'no limit is reached', 'plate limit: not known of this unit'],
  ['rideThroughFans', 'with fans, after', 'no limit is reached on fans', 'with fans: not known of this unit'],
];
