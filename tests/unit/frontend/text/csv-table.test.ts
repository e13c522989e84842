import { describe, expect, it } from 'vitest';
import { csvTable } from '../../../../frontend/src/text/csv-table';

describe('a table as CSV', () => {
  it('has a header, quoted texts with quotes doubled, bare numbers and CRLF (RFC 4180)', () => {
    expect(csvTable(['a', 'b "c"'], [['x, y', -1.5]])).toBe('"a","b ""c"""\r\n"x, y",-1.5\r\n');
  });

  it('leaves what is not there, or no number, empty', () => {
    expect(csvTable(['a', 'b', 'c'], [[null, NaN, Infinity]])).toBe('"a","b","c"\r\n,,\r\n');
  });

  // The characters that OWASP names: https://owasp.org/www-community/attacks/CSV_Injection
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1'])(
    'lets no spreadsheet take %j for a formula, in the header neither',
    (text) => {
      expect(csvTable([text], [[text]])).toBe(`"'${text}"\r\n"'${text}"\r\n`);
    },
  );
});
