import { existsSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { decideProposalFaults } from '@ebbline/shared/contract/alarm-list';
import { healthReasons } from '@ebbline/shared/contract/health-reasons';
import { describe, expect, test } from 'vitest';
import { secretVariables } from '../../../backend/src/connections/config/secret-files';
import { catalogue } from '../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { refusalCodes } from '../../../backend/src/evaluation/sample/acceptance';
import { projectFiles, projectFolder } from '../files/project-files';

const files = projectFiles();
const textOf = (path: string): string => files.find((file) => file.path === path)?.text ?? '';
const readme = textOf('README.md');
const developers = textOf('DEVELOPERS.md');

/** First cells of a table's rows that look like what is asked for. */
const firstCells = (text: string, cell: RegExp): string[] =>
  [...text.matchAll(/^\| `?([^`|]+?)`? +\|/gm)].map((match) => match[1] ?? '').filter((word) => cell.test(word));

const variablesIn = (text: string): string[] =>
  [...text.matchAll(/(?<='|variables\.)(EBBLINE_[A-Z_]*[A-Z])\b/g)].map((match) => match[1] ?? '');

describe('README', () => {
  test('begins with one paragraph that states the job', () => {
    const [title, paragraph] = readme.split('\n\n');
    expect(title).toBe('# Ebbline');
    expect(paragraph).toMatch(/^Ebbline watches /);
    expect(paragraph?.includes('\n')).toBe(false);
  });

  test('lists every variable of the environment, and no other', () => {
    const readers = [
      'backend/src/connections/config/environment.ts',
      'backend/src/connections/config/edge-environment.ts',
      'backend/src/connections/config/open-id-environment.ts',
      'backend/src/connections/config/secret-files.ts',
      'simulator/src/config/environment.ts',
    ];
    const read = new Set(readers.flatMap((path) => variablesIn(textOf(path))));
    for (const name of secretVariables) read.add(`${name}_FILE`);
    expect(read.size).toBeGreaterThan(5);
    expect(firstCells(readme, /^EBBLINE_/).sort()).toEqual([...read].sort());
  });

  test('lists every alarm of the catalogue, and no other', () => {
    expect(firstCells(readme, /^[A-Z]+-\d$/).sort()).toEqual(Object.keys(catalogue).sort());
  });

  test('lists every reason of health with its meaning and what to do, and no other', () => {
    const chapter = readme.slice(
      readme.indexOf('## Watch the program itself'),
      readme.indexOf('## Verify the journal'),
    );
    const rows = [...chapter.matchAll(/^\| `([A-Z_]+)` +\| (.*?) +\| (.*?) +\|$/gm)].map(([, ...cells]) => cells);
    expect(rows).toEqual(Object.entries(healthReasons).map(([code, { means, action }]) => [code, means, action]));
  });

  test('carries the cautions', () => {
    for (const word of [
      /live equipment/i,
      /biocides/i,
      /trapped hot water/i,
      /vacuum vessels/i,
      /Legionella/,
      /no safety system/,
      /local codes/,
    ]) {
      expect(readme).toMatch(word);
    }
  });
});

describe('DEVELOPERS', () => {
  test('lists every refusal code, and no other', () => {
    const codes = firstCells(developers, /^(TOPIC|PAYLOAD|FIELD|VALUE|TIME)_/);
    expect(codes).toEqual([...refusalCodes]);
  });

  test('lists every refusal of a changed setting, and no other', () => {
    expect(firstCells(developers, /^SETTING_/)).toEqual([...decideProposalFaults]);
  });

  test('names every command of package.json', () => {
    const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> };
    for (const name of Object.keys(scripts)) expect(developers).toMatch(new RegExp(`npm (run )?${name}`));
  });

  test('names every room, as the folders stand', () => {
    const parents = ['shared', 'backend', 'backend/src', 'backend/src/evaluation', 'backend/src/connections'];
    const rooms = [...parents, 'frontend/src', 'simulator/src'].flatMap((parent) =>
      readdirSync(join(projectFolder, parent), { withFileTypes: true })
        .filter((entry) => entry.isDirectory() && !['node_modules', 'src'].includes(entry.name))
        .map(({ name }) => ({ path: `${parent}/${name}`, name })),
    );
    expect(rooms.length).toBeGreaterThan(40);
    const table = developers.slice(developers.indexOf('| room '), developers.indexOf('## Commands'));
    const unnamed = rooms.filter(({ path, name }) => !table.includes(`\`${path}`) && !table.includes(`…/${name}\``));
    expect(unnamed.map(({ path }) => path)).toEqual([]);
  });
});

describe('links', () => {
  test('between documents lead somewhere', () => {
    const broken = files
      .filter(({ path }) => path.endsWith('.md'))
      .flatMap(({ path, text }) =>
        [...text.matchAll(/\]\((?!https?:|#)([^)#]+)(?:#[^)]*)?\)/g)]
          .map((match) => join(projectFolder, dirname(path), match[1] ?? ''))
          .filter((target) => !existsSync(target))
          .map((target) => `${path} → ${target.slice(projectFolder.length)}`),
      );
    expect(broken).toEqual([]);
  });
});
