import { describe, expect, it } from 'vitest';
import { allTables } from './all-tables';
import { checkIds } from './check-ids';
import { checkOf, deviationReport, reportText } from './deviation-report';
import { notWalked } from './not-walked';

const ids = Object.values(checkIds).flat();
const walked = new Set(allTables.flatMap(({ rows }) => rows.map(({ id }) => checkOf(id))));
const listed = new Set(notWalked.flatMap(({ checks }) => checks));

describe('the check values that this project is held to', () => {
  it('are 323, each by its own name', () => {
    expect(ids.length).toBe(323);
    expect(new Set(ids).size).toBe(323);
  });

  it('are each walked by a table, or listed with the reason why not', () => {
    expect(ids.filter((id) => !walked.has(id) && !listed.has(id))).toEqual([]);
  });

  it('are listed as not walked only where no table walks them', () => {
    expect([...listed].filter((id) => walked.has(id))).toEqual([]);
    expect([...listed].filter((id) => !ids.includes(id))).toEqual([]);
    for (const { reason } of notWalked) expect(reason.length).toBeGreaterThan(20);
  });

  /** `npm test -- published-values/accounting --reporter=verbose` prints the lines. */
  it('are met within their tolerance in every field', async ({ annotate }) => {
    const report = deviationReport(allTables);
    await annotate(reportText(report));
    for (const { field, worst } of report) expect(worst, field).toBeLessThanOrEqual(1);
    expect(report.reduce((sum, line) => sum + (line.checks > 0 ? line.walked : 0), 0)).toBe(ids.length - listed.size);
  });
});
