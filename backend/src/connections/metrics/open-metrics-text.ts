import { CodedError } from '@ebbline/shared/errors/coded-error';
import { unreachable } from '@ebbline/shared/errors/unreachable';
import type { Distribution, Labels, MetricFamily } from './metric-family';

/** Media type of the text (OpenMetrics 1.0, “Overall Structure” and “Protocol Negotiation”). */
export const openMetricsType = 'application/openmetrics-text; version=1.0.0; charset=utf-8';

/**
 * Families as OpenMetrics 1.0 text: for each its type, unit and help, then its samples; `# EOF` at the end.
 * @throws CodedError METRIC_MALFORMED where a name, a label or a value is none of the standard's: a mistake of ours
 */
export function openMetricsText(families: readonly MetricFamily[]): string {
  const names = new Set<string>();
  const lines: string[] = [];
  for (const family of families) {
    if (names.has(family.name)) malformed(family.name, 'stands there twice');
    names.add(family.name);
    write(lines, family);
  }
  return `${lines.join('\n')}${lines.length === 0 ? '' : '\n'}# EOF\n`;
}

function write(lines: string[], family: MetricFamily): void {
  const { name, type, unit, help } = family;
  if (!/^[A-Za-z_:][A-Za-z0-9_:]*$/.test(name)) malformed(name, 'is no metric name');
  if (unit !== undefined && !name.endsWith(`_${unit}`)) malformed(name, `must end with its unit, ${unit}`);
  lines.push(`# TYPE ${name} ${type}`);
  if (unit !== undefined) lines.push(`# UNIT ${name} ${unit}`);
  lines.push(`# HELP ${name} ${escaped(help)}`);
  switch (type) {
    case 'counter':
      for (const { labels, value } of distinct(family)) {
        if (!(value >= 0 && value < Infinity)) malformed(name, 'counts up from 0');
        lines.push(`${name}_total${braces(name, labels)} ${numberText(value)}`);
      }
      return;
    case 'gauge':
      for (const { labels, value } of distinct(family))
        lines.push(`${name}${braces(name, labels)} ${numberText(value)}`);
      return;
    case 'histogram':
      writeHistogram(lines, name, family.distribution);
      return;
    case 'summary':
      for (const { quantile, value } of family.quantiles)
        lines.push(`${name}{quantile="${canonical(quantile)}"} ${numberText(value)}`);
      return;
    case 'info':
      lines.push(`${name}_info${braces(name, family.labels)} 1`);
      return;
    default:
      unreachable(family);
  }
}

function writeHistogram(lines: string[], name: string, distribution: Distribution): void {
  const { bounds, count, sum } = distribution;
  const upTo = distribution.cumulative();
  bounds.forEach((bound, place) =>
    lines.push(`${name}_bucket{le="${canonical(bound)}"} ${numberText(upTo[place] ?? Number.NaN)}`),
  );
  lines.push(`${name}_bucket{le="+Inf"} ${numberText(count)}`);
  lines.push(`${name}_count ${numberText(count)}`, `${name}_sum ${numberText(sum)}`);
}

/** Each set of labels may stand there once only. */
function distinct(family: MetricFamily & { readonly type: 'counter' | 'gauge' }) {
  const seen = new Set(family.figures.map(({ labels }) => JSON.stringify(Object.entries(labels ?? {}).sort())));
  if (seen.size < family.figures.length) malformed(family.name, 'has the same labels twice');
  return family.figures;
}

function braces(name: string, labels: Labels = {}): string {
  const pairs = Object.entries(labels).map(([label, value]) => {
    if (!/^[A-Za-z_][A-Za-z0-9_]*$/.test(label)) malformed(name, 'has a label whose name is none');
    return `${label}="${escaped(value)}"`;
  });
  return pairs.length === 0 ? '' : `{${pairs.join(',')}}`;
}

/** A backslash, a double quote and a line feed are written with a backslash (ABNF `escaped-char`). */
const escaped = (text: string): string => text.replaceAll('\\', '\\\\').replaceAll('"', '\\"').replaceAll('\n', '\\n');

function numberText(value: number): string {
  if (Number.isNaN(value)) return 'NaN';
  if (!Number.isFinite(value)) return value > 0 ? '+Inf' : '-Inf';
  return String(value);
}

/** Bounds and quantiles always with a point: 1 is written 1.0 (“Numbers and Canonical Numbers”). */
const canonical = (value: number): string => (Number.isInteger(value) ? `${value}.0` : String(value));

function malformed(name: string, what: string): never {
  throw new CodedError('METRIC_MALFORMED', `${name} ${what}`);
}
