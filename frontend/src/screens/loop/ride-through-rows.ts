/** The clocks, with what is said where one does not run out. */
export const rideThroughRows: readonly (readonly [point: string, label: string, never: string])[] = [
  ['rideThroughFlow', 'stored water flows on for', 'not held by stored water'],
  ['rideThroughPlate', 'a plate is at its limit after', 'no limit is reached'],
  ['rideThroughFans', 'with fans, after', 'no limit is reached on fans'],
];
