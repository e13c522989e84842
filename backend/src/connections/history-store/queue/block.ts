import { promisify } from 'node:util';
import { crc32, deflateRaw, inflateRaw } from 'node:zlib';
import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';
import { fromColumns, rawBytesOf, toColumns } from './block-columns';
import { headerBytes, writeHeader, type BlockHeader } from './block-header';
import type { QueuedLayout } from './queued-layout';

const deflate = promisify<Buffer, { level: number }, Buffer>(deflateRaw);
const inflate = promisify<Buffer, { maxOutputLength: number }, Buffer>(inflateRaw);

/** The lowest: 5.4 of 9 bytes a sample are left, and what higher ones gain are hundredths. */
const level = 1;

/** Rows as one block: header and body, deflated off this thread. */
export async function sealBlock(
  rows: HistoryRows,
  layout: QueuedLayout,
): Promise<{ header: BlockHeader; bytes: Buffer }> {
  const { body, values } = toColumns(rows, layout.widths);
  const stored = await deflate(body, { level });
  let oldestMs = Infinity;
  let newestMs = -Infinity;
  for (let row = 0; row < rows.count; row++) {
    oldestMs = Math.min(oldestMs, rows.secondMs[row] ?? Infinity);
    newestMs = Math.max(newestMs, rows.secondMs[row] ?? -Infinity);
  }
  const header: BlockHeader = {
    layoutId: layout.id,
    rows: rows.count,
    values,
    oldestMs,
    newestMs,
    storedBytes: stored.length,
    rawBytes: body.length,
    bodySum: crc32(stored),
  };
  return { header, bytes: Buffer.concat([writeHeader(header), stored]) };
}

export const blockBytes = ({ storedBytes }: BlockHeader): number => headerBytes + storedBytes;

/** Whether the body is the one that was sealed. */
export const bodyIsWhole = (header: BlockHeader, stored: Buffer): boolean =>
  stored.length === header.storedBytes && crc32(stored) === header.bodySum;

/** The rows of a block; null where its checksum or its length refuses it. */
export async function openBlock(
  header: BlockHeader,
  stored: Buffer,
  layout: QueuedLayout,
): Promise<HistoryRows | null> {
  if (!bodyIsWhole(header, stored) || header.rawBytes !== rawBytesOf(header.rows, header.values)) return null;
  const body = await inflate(stored, { maxOutputLength: header.rawBytes });
  return body.length === header.rawBytes ? fromColumns(body, header.rows, layout.widths) : null;
}
