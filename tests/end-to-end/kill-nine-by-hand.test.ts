import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { HandEntry, HandEntryList } from '@ebbline/shared/contract/hand-entry';
import type { WaterQuality } from '@ebbline/shared/contract/water-quality';
import { describe, expect, test } from 'vitest';
import { benchSite, unitId } from '../bench/bench-site';
import { type Ebbline, startEbbline } from '../helpers/ebbline';
import { stopAfterEach } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { dataFolder } from './data-folder';
import { expectWholeChain, journalOf } from '../helpers/journal-of';

const keep = stopAfterEach();
const day = 86_400_000;
const water = '    water: { parameters: { molybdate: { low: 30 mg/L, high: 60 mg/L, as: Mo, due: 7 d } } }';
const entries = `/api/units/${unitId(0)}/hand-entries`;

/** A program whose first unit wants molybdate typed every seven days, and how to start it again with the same data. */
async function program(): Promise<() => Promise<Ebbline>> {
  const data = keep(await dataFolder());
  const files = keep(await temporaryFolder());
  const site = join(files.path, 'site.yaml');
  await writeFile(site, benchSite(1).replace('    points:', `${water}\n    points:`));
  const env = { EBBLINE_SITE: site, EBBLINE_SIMULATOR: 'off' };
  return async () => keep(await startEbbline({ data: data.path, env }));
}

const typed = (takenMs: number, note: string) => ({
  parameter: 'molybdate',
  value: 40,
  unit: 'mg/L',
  as: 'Mo',
  takenAt: new Date(takenMs).toISOString(),
  operator: 'Ines',
  note,
});

async function confirmed(ebbline: Ebbline, path: string, body: unknown): Promise<HandEntry> {
  const reply = await ebbline.post(path, body);
  expect(reply.status).toBe(200);
  return (await reply.json()) as HandEntry;
}

async function killed(ebbline: Ebbline): Promise<void> {
  ebbline.child.kill('SIGKILL');
  await ebbline.exit;
}

const listOf = async (ebbline: Ebbline) => (await ebbline.get<HandEntryList>(entries)).entries;
async function molybdateOf(ebbline: Ebbline) {
  const { parameters } = await ebbline.get<WaterQuality>(`/api/units/${unitId(0)}/water`);
  return parameters.find(({ parameter }) => parameter === 'molybdate');
}

describe('kill −9 after values were typed', () => {
  test.for([1, 6])('keeps each of the %i that were confirmed, once, and what is due when', async (killAfter) => {
    const start = await program();
    const first = await start();
    const startMs = Math.floor(Date.now() / 1000) * 1000;
    const done: HandEntry[] = [];
    const waiting = Array.from({ length: 30 }, (_, i) => typed(startMs - (30 - i) * 60_000, `sheet ${i}`));
    const lane = async (): Promise<void> => {
      for (let body = waiting.shift(); body !== undefined; body = waiting.shift()) {
        try {
          const reply = await first.post(entries, body);
          if (reply.status === 200) done.push((await reply.json()) as HandEntry);
        } catch {
          return;
        }
        if (done.length >= killAfter) first.child.kill('SIGKILL');
      }
    };
    await Promise.all([lane(), lane(), lane()]);
    await first.exit;
    expect(done.length).toBeGreaterThanOrEqual(killAfter);
    expect(done.length).toBeLessThan(30);

    const second = await start();
    const kept = await listOf(second);
    for (const entry of done) expect(kept.filter(({ note }) => note === entry.note)).toEqual([entry]);
    expect(new Set(kept.map(({ id }) => id)).size).toBe(kept.length);
    const newestMs = Math.max(...kept.map(({ takenAt }) => Date.parse(takenAt)));
    expect(await molybdateOf(second)).toMatchObject({
      origin: 'hand',
      dueAt: new Date(newestMs + 7 * day).toISOString(),
      overdue: false,
    });
    const rows = await journalOf(second);
    expectWholeChain(rows);
    expect(rows.filter(({ reason }) => reason?.includes('by hand, sample of') === true)).toHaveLength(kept.length);
  });

  test('keeps a withdrawal: the sample before it counts and says when the next is due', async () => {
    const start = await program();
    const first = await start();
    const nowMs = Math.floor(Date.now() / 1000) * 1000;
    const before = await confirmed(first, entries, typed(nowMs - 6 * day, 'sheet 1'));
    const wrong = await confirmed(first, entries, { ...typed(nowMs - 60_000, 'sheet 2'), value: 4 });
    const path = `${entries}/${encodeURIComponent(wrong.id)}/withdraw`;
    const withdrawal = await confirmed(first, path, { operator: 'Ines', note: 'of another unit' });
    await killed(first);

    const second = await start();
    const kept = await listOf(second);
    expect(kept).toHaveLength(3);
    expect(kept).toEqual(expect.arrayContaining([before, withdrawal, { ...wrong, correctedBy: withdrawal.id }]));
    expect(await molybdateOf(second)).toMatchObject({
      origin: 'hand',
      lastEntry: before,
      dueAt: new Date(nowMs + day).toISOString(),
    });
    const rows = await journalOf(second);
    expectWholeChain(rows);
    expect(rows.filter(({ reason }) => reason?.endsWith('of another unit') === true)).toHaveLength(1);
  });
});
