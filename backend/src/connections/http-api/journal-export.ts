import { setImmediate as nextTurn } from 'node:timers/promises';
import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { journalFactsSchema } from '@ebbline/shared/contract/journal-facts';
import { journalRowsAPage } from '@ebbline/shared/contract/journal-search';
import type { AlarmJournal } from '../../ports/alarm-journal';
import type { JournalQuery } from '../../ports/journal-query';
import { csvContentType, toCsv, type CsvCell } from './csv/to-csv';
import type { StreamedFile } from './send-stream';

/** Columns of the table, in the order of the row; facts follow, each in a column of its own. */
const columns = [
  ...['sequence', 'time', 'sourceTime', 'kind', 'cause', 'alarm', 'unit', 'hall', 'entry', 'from', 'to', 'priority'],
  ...['since', 'value', 'limit', 'unit_of_measure', 'where', 'foldedUnder', 'actor', 'station', 'reason'],
] as const;
const facts = Object.keys(journalFactsSchema.shape);
const header = [...columns, ...facts, 'previousHash', 'hash'];

/**
 * The rows that are on record now, oldest first, page by page; in between other work is done. The head of the chain is in it, so
 * that it can be compared with a walk over the chain: in JSON the member `head`, in CSV the last line, whose kind is `head`.
 */
export function journalExport(
  journal: Pick<AlarmJournal, 'page' | 'head'>,
  query: Omit<JournalQuery, 'order' | 'before' | 'limit'>,
  format: 'csv' | 'json',
): StreamedFile {
  const head = journal.head();
  const pages = pagesUntil(journal, query, head.sequence);
  const fileName = `journal-${head.sequence}.${format}`;
  return format === 'csv'
    ? { contentType: csvContentType, fileName, pieces: csvPieces(pages, head) }
    : { contentType: 'application/json; charset=utf-8', fileName, pieces: jsonPieces(pages, head) };
}

type Head = ReturnType<AlarmJournal['head']>;
type Pages = AsyncIterable<readonly JournalRow[]>;

async function* pagesUntil(
  journal: Pick<AlarmJournal, 'page'>,
  query: Omit<JournalQuery, 'order' | 'before' | 'limit'>,
  last: number,
): Pages {
  const until = { ...query, order: 'oldest', before: last + 1, limit: journalRowsAPage } as const;
  for (let after: number | null = query.after ?? 0; after !== null;) {
    const { rows, next } = journal.page({ ...until, after });
    yield rows;
    after = next;
    await nextTurn();
  }
}

async function* csvPieces(pages: Pages, head: Head): AsyncIterable<string> {
  yield toCsv(header, []);
  for await (const rows of pages) if (rows.length > 0) yield linesOf(rows.map(cellsOf));
  const note: Readonly<Record<string, CsvCell>> = {
    ...{ sequence: head.sequence, kind: 'head', hash: head.hash },
    reason: 'head of the chain when these rows were taken out; npm run journal:verify tells whether it is whole',
  };
  yield linesOf([header.map((column) => note[column] ?? null)]);
}

/** Lines without the header. */
const linesOf = (rows: readonly (readonly CsvCell[])[]): string => {
  const table = toCsv(header, rows);
  return table.slice(table.indexOf('\r\n') + 2);
};

function cellsOf(row: JournalRow): readonly CsvCell[] {
  const told: Readonly<Record<string, unknown>> = row.facts ?? {};
  return [
    ...columns.map((column) => cellOf((row as unknown as Readonly<Record<string, unknown>>)[column])),
    ...facts.map((fact) => cellOf(told[fact])),
    row.previousHash,
    row.hash,
  ];
}

const cellOf = (value: unknown): CsvCell =>
  typeof value === 'string' || typeof value === 'number'
    ? value
    : value === null || value === undefined
      ? null
      : JSON.stringify(value);

async function* jsonPieces(pages: Pages, head: Head): AsyncIterable<string> {
  yield `{"head":${JSON.stringify(head)},"rows":[`;
  let between = '\n';
  for await (const rows of pages) {
    if (rows.length > 0) yield `${between}${rows.map((row) => JSON.stringify(row)).join(',\n')}`;
    if (rows.length > 0) between = ',\n';
  }
  yield '\n]}\n';
}
