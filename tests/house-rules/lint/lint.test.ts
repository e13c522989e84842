import { ESLint } from 'eslint';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { projectFolder } from '../files/project-files';
import { plantedFaults } from './planted-faults';

const eslint = new ESLint({
  cwd: projectFolder,
  overrideConfigFile: join(projectFolder, 'tests/house-rules/eslint.config.mjs'),
});

describe('lint', () => {
  test('finds nothing in the project', async () => {
    const results = await eslint.lintFiles('.');
    expect(results.length).toBeGreaterThan(50);
    const faults = results.flatMap(({ filePath, messages }) =>
      messages.map(
        ({ line, ruleId, message }) => `${filePath.slice(projectFolder.length)}:${line} ${ruleId ?? ''} ${message}`,
      ),
    );
    expect(faults).toEqual([]);
  });

  test.for(plantedFaults)('$rule refuses $code', async ({ rule, file, code }) => {
    const [result] = await eslint.lintText(`${code}\n`, { filePath: join(projectFolder, file) });
    expect(result?.messages.map(({ ruleId }) => ruleId)).toContain(rule);
  });
});
