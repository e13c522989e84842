import { execFile } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { foundNow, suiteNeeding } from '../../helpers/requirements';
import { projectFolder } from '../files/project-files';
import { auditAnswers } from './audit-answers';
import { expiredAnswers, judgeAudit } from './judge-audit';

const today = new Date().toISOString().slice(0, 10);
const path = 'node_modules/a/node_modules/b';
const url = 'https://advisories.example/1';
/** As `npm audit --json` writes it (npm 9 to 11, report version 2; from memory). */
const reportWith = (vulnerabilities: object): object => ({ auditReportVersion: 2, vulnerabilities });
const planted = reportWith({
  b: { name: 'b', severity: 'high', nodes: [path], via: [{ url, title: 'planted', severity: 'high' }] },
  a: { name: 'a', severity: 'high', nodes: ['node_modules/a'], via: ['b'] },
});
const answer = { advisory: url, package: 'b', path, whyUnreachable: 'planted', until: '2030-06-30' };

describe('an answer to a finding of the audit', () => {
  test('is missing where none stands for the package at that path', () => {
    expect(judgeAudit(planted, [], '2030-01-01')).toEqual([
      expect.stringContaining(`${path}: planted (high, ${url})`) as string,
    ]);
    for (const other of [{ path: 'node_modules/b' }, { package: 'c' }, { advisory: `${url}2` }])
      expect(judgeAudit(planted, [{ ...answer, ...other }], '2030-01-01')).toHaveLength(2);
  });

  test('holds to its last day, and no longer', () => {
    expect(judgeAudit(planted, [answer], '2030-06-30')).toEqual([]);
    expect(judgeAudit(planted, [answer], '2030-07-01')).toEqual([expect.stringContaining('ran out') as string]);
    expect(expiredAnswers([{ ...answer, until: 'never' }], '2030-01-01')).toHaveLength(1);
  });

  test('is taken away once it answers nothing', () => {
    expect(judgeAudit(reportWith({}), [answer], '2030-01-01')).toEqual([
      expect.stringContaining('answers nothing') as string,
    ]);
  });

  test('has not run out, whether or not a registry can be asked', () => {
    expect(expiredAnswers(auditAnswers, today)).toEqual([]);
  });
});

const report = await audit();
if (report !== null) foundNow('npm-audit', 'npm');

suiteNeeding(['npm-audit'], 'the packages that ship, by npm audit', () => {
  test('have no finding without an answer', () => {
    expect(judgeAudit(report, auditAnswers, today)).toEqual([]);
  });
});

/** The report, also where there are findings; null where no registry answers, or not with a report. */
function audit(): Promise<unknown> {
  const asked = ['audit', '--omit=dev', '--json', '--fetch-retries=0', '--fetch-timeout=20000'];
  return new Promise((resolve) => {
    execFile('npm', asked, { cwd: projectFolder, timeout: 60_000, maxBuffer: 16_777_216 }, (_fault, text) => {
      resolve(reportIn(text));
    });
  });
}

function reportIn(text: string): unknown {
  try {
    const parsed: unknown = JSON.parse(text);
    return typeof parsed === 'object' && parsed !== null && 'auditReportVersion' in parsed ? parsed : null;
  } catch {
    return null;
  }
}
