import { readFileSync } from 'node:fs';
import { rights, roles } from '@ebbline/shared/contract/people';
import { expect, it } from 'vitest';
import { rightsOfRole } from '../../../backend/src/access/rights-of-role';

const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8');
const chapter = readme.split('## Who may do what\n')[1]?.split('\n## ')[0] ?? '';

it('README tells of every right which roles have it', () => {
  const rows = chapter
    .split('\n')
    .filter((line) => line.startsWith('| `'))
    .map((line) => line.split('|').map((cell) => cell.trim()));
  const told = rows.map(([, right, , ...has]) => [right, ...has.slice(0, roles.length)]);
  const are = rights.map((right) => [
    `\`${right}\``,
    ...roles.map((role) => (rightsOfRole[role].includes(right) ? 'yes' : 'no')),
  ]);
  expect(told).toEqual(are);
});
