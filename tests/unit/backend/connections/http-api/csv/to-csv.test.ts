import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toCsv } from '../../../../../../backend/src/connections/http-api/csv/to-csv';

const cellOf = (text: string): string => parse(toCsv(['a'], [[text]]))[1]?.[0] ?? '';

/** RFC 4180 section 2, rules 1 to 7. */
describe('a table as CSV', () => {
  it('ends every line with CR LF and begins with the header', () => {
    expect(toCsv(['entry', 'limit'], [['DEW-1', 2]])).toBe('"entry","limit"\r\n"DEW-1",2\r\n');
  });

  it('keeps commas, quotes and line breaks within a cell', () => {
    expect(toCsv(['a'], [['one, "two"\r\nthree']])).toBe('"a"\r\n"one, ""two""\r\nthree"\r\n');
  });

  it('writes nothing for null, NaN and what is not finite, and words for yes and no', () => {
    expect(toCsv(['a', 'b', 'c', 'd', 'e'], [[null, Number.NaN, Number.POSITIVE_INFINITY, true, false]])).toBe(
      '"a","b","c","d","e"\r\n,,,true,false\r\n',
    );
  });
});

/** OWASP, "CSV Injection": cells that begin with = + - @, tab, carriage return, line feed, or a full-width form of them. */
describe('a cell that a spreadsheet would take for a formula', () => {
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '=cmd|"/c calc"!A0', '＝1+1', '＋1', '－1', '＠A1'])(
    'gets an apostrophe before %j and stands in quotes',
    (text) => {
      expect(cellOf(text)).toBe(`'${text}`);
      expect(toCsv(['a'], [[text]])).toBe(`"a"\r\n"'${text.replaceAll('"', '""')}"\r\n`);
    },
  );

  it('is no negative number', () => {
    expect(toCsv(['a'], [[-1.5]])).toBe('"a"\r\n-1.5\r\n');
  });

  it('is written harmless whatever the text is, and every other text comes back as it was', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const read = cellOf(text);
        expect(read).not.toMatch(/^[=+\-@\t\r\n]/);
        expect(read === text || read === `'${text}`).toBe(true);
      }),
    );
  });

  it('in a header is harmless too', () => {
    expect(toCsv(['=A1'], [])).toBe('"\'=A1"\r\n');
  });
});
