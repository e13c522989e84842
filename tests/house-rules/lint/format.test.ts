import { join } from 'node:path';
import prettier from 'prettier';
import { describe, expect, test } from 'vitest';
import { projectFiles, projectFolder } from '../files/project-files';

const ignorePath = join(projectFolder, '.prettierignore');

async function formatted(path: string, text: string): Promise<boolean> {
  const filepath = join(projectFolder, path);
  const { ignored, inferredParser } = await prettier.getFileInfo(filepath, { ignorePath });
  if (ignored || inferredParser === null) return true;
  return prettier.check(text, { ...(await prettier.resolveConfig(filepath)), filepath });
}

describe('format', () => {
  test('every file is as Prettier writes it', async () => {
    const bad: string[] = [];
    for (const { path, text } of projectFiles()) if (!(await formatted(path, text))) bad.push(path);
    expect(bad).toEqual([]);
  });

  test('a crooked file is refused', async () => {
    expect(await formatted('shared/units/quantity.ts', 'export const a   = "b"')).toBe(false);
  });
});
