import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { fail } from '@ebbline/shared/errors/result';
import { describe, expect, it } from 'vitest';
import { RunnerReportDesk, type ReportDeskParts } from '../../../../../backend/src/runner/report/report-desk';
import { historyInMemory } from '../../../../helpers/history-in-memory';
import { smallSite } from '../../../../helpers/small-site';
import { fromMs, toMs } from './report-sources';

const site = smallSite();
const query = { hall: null, fromMs, toMs, madeBy: null, mayReadAudit: false };

/** A desk that waits at the first page of the journal until it is let go on. */
function heldDesk(parts: Partial<ReportDeskParts> = {}) {
  const held: (() => void)[] = [];
  let isOpen = false;
  const desk = new RunnerReportDesk({
    journal: { page: () => ({ rows: [], next: null }), standingAt: () => null, hand: () => [] },
    store: historyInMemory(site),
    site: () => site,
    nowMs: () => toMs,
    wallMs: () => toMs,
    notes: { notes: () => fail({ code: 'HALL_UNKNOWN', message: 'none' }), handovers: () => [] },
    energy: { report: () => Promise.resolve(fail({ code: 'ENERGY_NOT_YET', message: 'not yet' })) },
    performance: { report: () => Promise.resolve(fail({ code: 'HALL_UNKNOWN', message: 'none' })) },
    trends: { uncertainty: () => Promise.resolve(fail({ code: 'POINT_UNKNOWN', message: 'none' })) },
    unrecorded: () => 0,
    siteSinceMs: () => fromMs,
    pause: () => (isOpen ? Promise.resolve() : new Promise((resolve) => held.push(resolve))),
    ...parts,
  });
  const open = (): void => {
    isOpen = true;
    for (const one of held) one();
  };
  return { desk, held, open };
}

describe('reports', () => {
  it('are put together one at a time, a few wait, and more are refused, as each reads history for every unit', async () => {
    const { desk, held, open } = heldDesk();
    const asked = Array.from({ length: 8 }, () => desk.report(query));
    const refused = await Promise.all(asked.slice(5));
    expect(refused.map((one) => !one.ok && one.fault.code)).toEqual(Array(3).fill('TOO_MANY_REQUESTS'));
    expect(held).toHaveLength(1);
    open();
    const made = await Promise.all(asked.slice(0, 5));
    expect(made.map(({ ok }) => ok)).toEqual(Array(5).fill(true));
    expect((await desk.report(query)).ok).toBe(true);
  });

  it('begun on the source clock again, before its first sample, go as far as the program before this one had come', async () => {
    const row = { alarm: 'm1:AIR-1', cause: 'raised', sourceTime: new Date(toMs - 1000).toISOString() };
    const journal = {
      page: ({ order }: { order?: string }) => ({ rows: order === 'newest' ? [row as JournalRow] : [], next: null }),
      standingAt: () => null,
      hand: () => [],
    };
    const { desk, open } = heldDesk({ journal, nowMs: () => Number.NaN, wallMs: () => fromMs - 1000 });
    open();
    const made = await desk.report(query);
    expect(made.ok && made.value.until).toBe(new Date(toMs - 1000).toISOString());
  });
});
