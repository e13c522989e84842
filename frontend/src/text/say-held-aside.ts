/** Alarms that are not told though their condition holds: as long as there are any, nothing is calm. */
export const sayHeldAside = (count: number): string =>
  count === 1
    ? '1 alarm is set aside while its condition holds'
    : `${count} alarms are set aside while their conditions hold`;

/** The same of a past moment. */
export const sayHeldAsideThen = (count: number): string =>
  count === 1
    ? '1 alarm was set aside while its condition held'
    : `${count} alarms were set aside while their conditions held`;
