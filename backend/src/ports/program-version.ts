/** The version of this program, as in its package.json. */
export const PROGRAM_VERSION = Symbol('ProgramVersion');
