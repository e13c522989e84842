import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { projectFiles, projectFolder } from '../files/project-files';

const textOf = (path: string): string => projectFiles().find((file) => file.path === path)?.text ?? '';
const states = ['met', 'not applicable', 'open'] as const;

const rows = [
  ...textOf('backend/docs/security-requirements.md').matchAll(/^\| (V[^|]*)\|([^|]*)\|([^|]*)\|([^|]*)\|([^|]*)\|$/gm),
].map((cells) => {
  const [number = '', asks = '', state = '', keptBy = '', note = ''] = cells.slice(1).map((cell) => cell.trim());
  return { number, asks, state, keptBy, note };
});

/** The requirements of the Application Security Verification Standard, as far as they apply. */
describe('the table of security requirements', () => {
  test('judges each number once, in the order of the standard, by one of three words', () => {
    expect(rows.length).toBeGreaterThan(100);
    const order = rows.map(({ number }) => {
      expect(number).toMatch(/^V\d+\.\d+\.\d+$/);
      return number
        .slice(1)
        .split('.')
        .reduce((sum, part) => sum * 100 + Number(part), 0);
    });
    expect(order).toEqual([...new Set(order)].sort((a, b) => a - b));
    expect(rows.filter(({ state }) => !states.some((one) => one === state))).toEqual([]);
  });

  test('names for what is met a file that is there, and for the rest a reason', () => {
    const met = rows.filter(({ state }) => state === 'met');
    const absent = met.filter(
      ({ keptBy }) => !existsSync(join(projectFolder, /^`([^`]+)`$/.exec(keptBy)?.[1] ?? 'none')),
    );
    expect(absent).toEqual([]);
    expect(rows.filter(({ state, note }) => state !== 'met' && note.length < 10)).toEqual([]);
  });

  test('is summed up in README as it stands', () => {
    const [met, notApplicable, open] = states.map((state) => rows.filter((row) => row.state === state).length);
    expect(textOf('README.md')).toContain(
      `${rows.length} requirements: ${met} met, ${notApplicable} not applicable, ${open} open`,
    );
  });
});
