import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
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
  [...text.matchAll(/'(EBBLINE_[A-Z_]+)'/g)].map((match) => match[1] ?? '');

describe('README', () => {
  test('begins with one paragraph that states the job', () => {
    const [title, paragraph] = readme.split('\n\n');
    expect(title).toBe('# Ebbline');
    expect(paragraph).toMatch(/^Ebbline watches /);
    expect(paragraph?.includes('\n')).toBe(false);
  });

  test('lists every variable of the environment, and no other', () => {
    const read = new Set(variablesIn(textOf('backend/src/connections/config/environment.ts')));
    expect(read.size).toBeGreaterThan(5);
    expect(firstCells(readme, /^EBBLINE_/).sort()).toEqual([...read].sort());
  });

  test('lists every alarm of the catalogue, and no other', () => {
    expect(firstCells(readme, /^[A-Z]+-\d$/).sort()).toEqual(Object.keys(catalogue).sort());
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

  test('names every command of package.json', () => {
    const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> };
    for (const name of Object.keys(scripts)) expect(developers).toMatch(new RegExp(`npm (run )?${name}`));
  });

  test('names every room of the backend and of shared', () => {
    for (const room of [
      'evaluation',
      'ports',
      'runner',
      'connections',
      'fluid-properties',
      'hydraulics',
      'heat',
      'contract',
    ]) {
      expect(developers).toContain(room);
    }
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
