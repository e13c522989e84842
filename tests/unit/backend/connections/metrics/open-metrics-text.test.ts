import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Histogram } from '@ebbline/shared/statistics/histogram';
import {
  counter,
  gauge,
  histogram,
  type MetricFamily,
} from '../../../../../backend/src/connections/metrics/metric-family';
import { openMetricsText } from '../../../../../backend/src/connections/metrics/open-metrics-text';
import { figureOf, readOpenMetrics } from '../../../../helpers/open-metrics';

describe('OpenMetrics text', () => {
  // OpenMetrics 1.0: order of descriptors free, unit as suffix, `_total`, `_info`, canonical bounds, `# EOF`.
  it('is written as the standard says, type by type', () => {
    const took = new Histogram([0.5, 1]);
    for (const seconds of [0.25, 0.5, 3]) took.observe(seconds);
    const families: readonly MetricFamily[] = [
      counter('messages', 'All of them.', 12),
      gauge('memory_bytes', 'Now.', 1.5e9),
      histogram('took_seconds', 'How long.', took),
      {
        type: 'summary',
        name: 'delay_seconds',
        unit: 'seconds',
        help: 'Late.',
        quantiles: [{ quantile: 1, value: 2 }],
      },
      { type: 'info', name: 'program', help: 'What.', labels: { version: '1.2.3' } },
    ];
    expect(openMetricsText(families)).toBe(
      [
        '# TYPE messages counter',
        '# HELP messages All of them.',
        'messages_total 12',
        '# TYPE memory_bytes gauge',
        '# UNIT memory_bytes bytes',
        '# HELP memory_bytes Now.',
        'memory_bytes 1500000000',
        '# TYPE took_seconds histogram',
        '# UNIT took_seconds seconds',
        '# HELP took_seconds How long.',
        'took_seconds_bucket{le="0.5"} 2',
        'took_seconds_bucket{le="1.0"} 2',
        'took_seconds_bucket{le="+Inf"} 3',
        'took_seconds_count 3',
        'took_seconds_sum 3.75',
        '# TYPE delay_seconds summary',
        '# UNIT delay_seconds seconds',
        '# HELP delay_seconds Late.',
        'delay_seconds{quantile="1.0"} 2',
        '# TYPE program info',
        '# HELP program What.',
        'program_info{version="1.2.3"} 1',
        '# EOF',
        '',
      ].join('\n'),
    );
    expect(openMetricsText([])).toBe('# EOF\n');
  });

  it('comes back as it was through an independent reader, whatever stands in labels, helps and values', () => {
    const text = fc.string({ unit: 'grapheme' });
    const number = fc.double();
    fc.assert(
      fc.property(text, text, number, (help, value, figure) => {
        const read = readOpenMetrics(openMetricsText([gauge('one', help, [{ labels: { of: value }, value: figure }])]));
        expect(read.get('one')?.help).toBe(help);
        const back = figureOf(read, 'one', { of: value });
        expect(Object.is(back, figure) || back === figure).toBe(true);
      }),
    );
  });

  it.each<[string, readonly MetricFamily[]]>([
    ['a name that is none', [gauge('1st', '', 1)]],
    ['a label that is none', [gauge('one', '', [{ labels: { 'a-b': '' }, value: 1 }])]],
    ['a family twice', [gauge('one', '', 1), gauge('one', '', 1)]],
    ['the same labels twice', [gauge('one', '', [{ value: 1 }, { value: 2 }])]],
    ['a counter that is no count', [counter('one', '', Number.NaN)]],
    ['a counter below zero', [counter('one', '', -1)]],
    ['a unit that its name does not have', [{ ...gauge('one', '', 1), unit: 'bytes' }]],
  ])('refuses %s', (_, families) => {
    expect(() => openMetricsText(families)).toThrow(expect.objectContaining({ code: 'METRIC_MALFORMED' }));
  });
});

describe('the reader of the tests', () => {
  it.each([
    'one 1\n# EOF\n',
    '# TYPE one gauge\none 1\n',
    '# TYPE one gauge\none 1\n# EOF',
    '# TYPE one counter\none 1\n# EOF\n',
    '# TYPE one gauge\none{a="b} 1\n# EOF\n',
    '# TYPE one gauge\none{a="\\x"} 1\n# EOF\n',
    '# TYPE one gauge\none 0x1\n# EOF\n',
    '# TYPE one gauge\none 1\none 2\n# EOF\n',
    '# TYPE one_seconds gauge\n# UNIT one_seconds bytes\n# EOF\n',
    '# TYPE one gauge\none 1\n# TYPE two gauge\ntwo 1\n# TYPE one gauge\n# EOF\n',
    '# TYPE one histogram\none_bucket{le="1.0"} 2\none_bucket{le="+Inf"} 1\none_count 1\n# EOF\n',
    '# TYPE one histogram\none_bucket{le="1.0"} 1\none_count 1\n# EOF\n',
  ])('refuses %j', (text) => {
    expect(() => readOpenMetrics(text)).toThrow();
  });
});
