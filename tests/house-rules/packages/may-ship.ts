import type { LockedPackage } from './locked-packages';

/** Licences that ask for no more than to be named (SPDX identifiers; all approved by the OSI, fonts: OFL-1.1). */
const permissive = new Set([
  ...['MIT', 'ISC', 'Apache-2.0', 'BSD-2-Clause', 'BSD-3-Clause', '0BSD', 'BlueOak-1.0.0', 'OFL-1.1'],
]);

/** Other licences that are in order all the same, each for a reason. */
const reasoned: readonly { readonly name: RegExp; readonly licence: string; readonly why: string }[] = [
  {
    name: /^lightningcss(-|$)/,
    licence: 'MPL-2.0',
    why: 'a tool of the build, used unchanged; nothing of it is in what it builds (MPL 2.0, 3.3: a larger work may have its own terms)',
  },
];

/** Whether a package may be among those that Ebbline needs to run. */
export const mayShip = ({ name, licence }: Pick<LockedPackage, 'name' | 'licence'>): boolean =>
  licence !== null && (isPermissive(licence) || reasoned.some((one) => one.licence === licence && one.name.test(name)));

/** SPDX expression without nested brackets: one of those joined by OR is enough, of those joined by AND each counts. */
const isPermissive = (expression: string): boolean =>
  expression
    .replace(/[()]/g, '')
    .split(' OR ')
    .some((choice) => choice.split(' AND ').every((id) => permissive.has(id.trim())));
