import { describe, expect, test } from 'vitest';
import { fileRules } from './file-rules';
import { isSource, lineCount, projectFiles } from './project-files';

const files = projectFiles();
const words = (path: string, text: string) => ({ path, text });

/** One file that each rule must refuse; the marks are joined so that this file is clean itself. */
const planted: Readonly<Record<keyof typeof fileRules, readonly { readonly path: string; readonly text: string }[]>> = {
  notTooLong: ['shared/a.ts', 'frontend/src/A.vue', 'frontend/src/a.css'].map((path) => words(path, 'x\n'.repeat(301))),
  finished: [words('shared/a.ts', `// ${'TO'}DO later`), words('README.md', `${'FIX'}ME`)],
  nothingLeftOut: [
    words('tests/a.test.ts', `test.${'skip'}('a')`),
    words('tests/a.test.ts', `describe.${'only'}('a')`),
  ],
  namedAfterTheHouse: [words('shared/aB.ts', ''), words('frontend/src/quiet-text.vue', ''), words('shared/a_b.ts', '')],
  namesNoMachine: ['/wo_rk/main', '/ho_me/someone/x', '/ro_ot/x', '/tm_p/ebbline', '~_/ebbline'].map((place) =>
    words('a.md', `see ${place.replace('_', '')}`),
  ),
  namesNoPaper: [
    'PLA_NT section 2',
    'EQUA_TIONS 6',
    'DES_IGN.md',
    'ALA_RMS, 7',
    'checks_.json',
    'Plant refe_rence, 2',
  ].map((paper) => words('shared/a.ts', `// as in ${paper.replace('_', '')}`)),
  titlesSayWhatHappens: [words('tests/a.test.ts', `test('it ${'should'} work', () => {})`)],
};

describe('every file', () => {
  test.for(Object.entries(fileRules))('%s', ([, rule]) => {
    expect(files.flatMap((file) => (rule(file) === null ? [] : [`${file.path} ${rule(file) ?? ''}`]))).toEqual([]);
  });

  test.for(Object.entries(planted))('%s refuses what is planted', ([name, bad]) => {
    for (const file of bad) expect(fileRules[name]?.(file)).not.toBeNull();
    expect(fileRules[name]?.(words('shared/units/quantity.ts', 'export const one = 1;\n'))).toBeNull();
  });
});

describe('sources that ship', () => {
  const lengths = files
    .filter((file) => isSource(file) && !file.path.startsWith('tests/') && !file.path.endsWith('.table.ts'))
    .map(lineCount)
    .sort((a, b) => a - b);
  const quantile = (part: number): number => lengths[Math.floor(lengths.length * part)] ?? Number.NaN;

  test('are small: half below 80 lines, nine of ten below 150', () => {
    expect(lengths.length).toBeGreaterThan(30);
    expect(quantile(0.5)).toBeLessThan(80);
    expect(quantile(0.9)).toBeLessThan(150);
  });
});
