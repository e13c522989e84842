/** Code that a rule must refuse, linted as if it stood in `file` (a file that exists: the types come from its room). */
export interface PlantedFault {
  readonly rule: string;
  readonly file: string;
  readonly code: string;
}

const shared = 'shared/units/quantity.ts';
const evaluation = 'backend/src/evaluation/slots/slot-state.ts';
const access = 'backend/src/access/session-times.ts';
const backend = 'backend/src/ports/alarm-journal.ts';
const house = 'tests/house-rules/files/files.test.ts';

export const plantedFaults: readonly PlantedFault[] = [
  { rule: 'no-restricted-globals', file: shared, code: 'export const now = () => Date.now();' },
  { rule: 'no-restricted-globals', file: evaluation, code: 'export const now = () => new Date();' },
  { rule: 'no-restricted-globals', file: evaluation, code: "export const say = () => console.log('a');" },
  {
    rule: 'no-restricted-globals',
    file: evaluation,
    code: 'export const later = (f: () => void) => setTimeout(f, 1);',
  },
  { rule: 'no-restricted-globals', file: access, code: 'export const now = () => Date.now();' },
  { rule: 'no-restricted-properties', file: shared, code: 'export const chance = () => Math.random();' },
  {
    rule: 'no-restricted-syntax',
    file: evaluation,
    code: 'export const wait = async (p: Promise<void>) => { await p; };',
  },
  { rule: 'no-restricted-syntax', file: backend, code: 'export default 1;' },
  { rule: 'no-restricted-syntax', file: house, code: `test.${'only'}('a', () => undefined);` },
  { rule: '@typescript-eslint/no-explicit-any', file: backend, code: 'export const a = (b: any): unknown => b;' },
  {
    rule: '@typescript-eslint/no-floating-promises',
    file: backend,
    code: 'export const a = (p: Promise<void>) => { p; };',
  },
  {
    rule: '@typescript-eslint/no-non-null-assertion',
    file: backend,
    code: 'export const a = (b: number | null): number => b!;',
  },
  {
    rule: '@typescript-eslint/switch-exhaustiveness-check',
    file: backend,
    code: "export const a = (b: 'x' | 'y') => { switch (b) { case 'x': return 1; } return 2; };",
  },
  {
    rule: '@typescript-eslint/consistent-type-imports',
    file: backend,
    code: "import { JournalRow } from '@ebbline/shared/contract/alarm';\nexport type A = JournalRow;",
  },
  { rule: 'max-lines', file: backend, code: 'export const a = 1;\n'.repeat(301) },
  { rule: 'eqeqeq', file: backend, code: 'export const a = (b: number) => b == 1;' },
];
