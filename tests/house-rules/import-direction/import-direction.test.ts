import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, test } from 'vitest';
import { stopAfterAll } from '../../helpers/stop-after';
import { type TemporaryFolder, temporaryFolder } from '../../helpers/temporary-folder';
import { plantIn, writeCleanTree } from './clean-tree';
import { cruiseTree, ruleNames } from './cruise-tree';
import { plantedViolations } from './planted-violations';

const project = fileURLToPath(new URL('../../..', import.meta.url));

describe('import direction', () => {
  test('every import of the project goes along an arrow', async () => {
    const { files, violations } = await cruiseTree(project);
    expect(files).toBeGreaterThan(30);
    expect(violations.map(({ rule, from, to }) => `${rule}: ${from} → ${to}`)).toEqual([]);
  });
});

describe('planted violations', () => {
  const keep = stopAfterAll();
  let folder: TemporaryFolder;
  beforeAll(async () => {
    folder = keep(await temporaryFolder());
    await writeCleanTree(folder.path);
  });

  test('the tree without one is clean', async () => {
    const { files, violations } = await cruiseTree(folder.path);
    expect(files).toBeGreaterThan(30);
    expect(violations).toEqual([]);
  });

  test('every rule has one', () => {
    const planted = new Set(plantedViolations.map(({ rule }) => rule));
    expect(ruleNames.filter((name) => !planted.has(name))).toEqual([]);
  });

  test.for(plantedViolations)('$rule refuses $specifier in $file', async (planted) => {
    const takeOut = await plantIn(folder.path, planted);
    try {
      const { violations } = await cruiseTree(folder.path);
      expect(violations.map(({ rule }) => rule)).toContain(planted.rule);
    } finally {
      await takeOut();
    }
  });
});
