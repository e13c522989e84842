import { afterEach, describe, expect, it } from 'vitest';
import { besideInUs } from '../../../../frontend/src/text/beside-in-us';
import { readIn } from '../../../helpers/read-in';

afterEach(() => readIn('metric'));
const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('a sentence that was written in metric units', () => {
  it('stands as it was written for who reads those', () => {
    expect(besideInUs('by 5 kPa and 40 °C')).toBe('by 5 kPa and 40 °C');
  });

  // Factors of NIST SP 811 (2008), appendix B.8.
  it.each([
    ['raise it by 5 kPa; at once', 'raise it by 5 kPa (0.7 psi); at once'],
    ['expected at 61 °C on fans', 'expected at 61 °C (142 °F) on fans'],
    ['4 K above that of the curve', '4 K (7 °F) above that of the curve'],
    ['lets 80 free L/min in', 'lets 80 free L/min (170 ft³/h free air) in'],
    ['at least 30.0 L/min.', 'at least 30.0 L/min (7.93 gpm).'],
    ['a bore of 5 mm', 'a bore of 5 mm (0.20 in)'],
    ['the level is up by 12 L', 'the level is up by 12 L (3.2 gal)'],
  ])('has each figure in US units beside it: %s', (sentence, expected) => {
    readIn('us');
    expect(plain(besideInUs(sentence))).toBe(expected);
  });

  it('knows that what follows a ± is a spread, and what follows a to is not', () => {
    readIn('us');
    expect(plain(besideInUs('reads 35.0 ± 0.5 °C'))).toBe('reads 35.0 ± 0.5 °C (95.0 ± 0.9 °F)');
    expect(plain(besideInUs('from 30 to 120 °C'))).toBe('from 30 to 120 °C (86 to 248 °F)');
  });

  it('takes a true minus and thin spaces as a number is printed', () => {
    readIn('us');
    expect(plain(besideInUs('−40 °C'))).toBe('−40 °C (−40 °F)');
  });

  it.each(['5 L/s', 'κ of 20 K/min', '3 kW', 'a Kelvin', 'Rack 5 Left', '12 mmHg'])(
    'leaves others alone: %s',
    (sentence) => {
      readIn('us');
      expect(besideInUs(sentence)).toBe(sentence);
    },
  );
});
