/**
 * Reads OpenMetrics 1.0 text by the standard's ABNF and its rules for families, apart from what writes it
 * (OpenMetrics 1.0, “ABNF”, “Overall Structure”, “MetricFamily”, “Metric Types”). Throws at the first line that is none.
 */
export interface ReadFamily {
  readonly name: string;
  type: string;
  unit: string | null;
  help: string | null;
  readonly samples: ReadSample[];
}

export interface ReadSample {
  readonly name: string;
  readonly labels: Readonly<Record<string, string>>;
  readonly value: number;
}

const suffixes: Readonly<Record<string, readonly string[]>> = {
  counter: ['_total', '_created'],
  gauge: [''],
  histogram: ['_bucket', '_count', '_sum', '_created'],
  summary: ['', '_count', '_sum', '_created'],
  info: ['_info'],
  stateset: [''],
  unknown: [''],
};
const metricName = '[A-Za-z_:][A-Za-z0-9_:]*';
const escapedText = '(?:[^\\n"\\\\]|\\\\[n"\\\\])*';
const descriptor = new RegExp(`^# (TYPE|UNIT|HELP) (${metricName}) (.*)$`, 's');
const sampleLine = new RegExp(`^(${metricName})(?:\\{(.*)\\})? (\\S+)$`, 's');
const label = new RegExp(`([A-Za-z_][A-Za-z0-9_]*)="(${escapedText})"(,|$)`, 'y');
const realNumber = /^[+-]?(\d+|\d+\.\d*|\d*\.\d+)(e[+-]?\d+)?$/i;

export function readOpenMetrics(text: string): ReadonlyMap<string, ReadFamily> {
  const lines = text.split('\n');
  if (lines.pop() !== '' || lines.pop() !== '# EOF')
    throw new Error('the text does not end with # EOF and a line feed');
  const families = new Map<string, ReadFamily>();
  let current = null as ReadFamily | null;
  for (const line of lines) {
    const described = descriptor.exec(line);
    if (described !== null) {
      const [, what = '', name = '', rest = ''] = described;
      if (current?.name !== name) {
        if (families.has(name)) throw new Error(`${name} stands in two places`);
        current = { name, type: 'unknown', unit: null, help: null, samples: [] };
        families.set(name, current);
      }
      describe(current, what, rest);
    } else {
      const sample = readSample(line);
      if (current === null || !isOf(current, sample.name)) throw new Error(`${line}: stands under no family`);
      current.samples.push(sample);
    }
  }
  for (const family of families.values()) check(family);
  return families;
}

/** The value of the one sample with these labels. */
export function figureOf(
  families: ReadonlyMap<string, ReadFamily>,
  sampleName: string,
  labels: Readonly<Record<string, string>> = {},
): number {
  const wanted = JSON.stringify(Object.entries(labels).sort());
  const found = [...families.values()]
    .flatMap(({ samples }) => samples)
    .filter((one) => one.name === sampleName && JSON.stringify(Object.entries(one.labels).sort()) === wanted);
  if (found.length !== 1) throw new Error(`${found.length} samples ${sampleName} ${wanted}`);
  return found[0]?.value ?? Number.NaN;
}

function describe(family: ReadFamily, what: string, rest: string): void {
  if (family.samples.length > 0) throw new Error(`${family.name}: ${what} after its samples`);
  if (what === 'TYPE') {
    if (suffixes[rest] === undefined) throw new Error(`${family.name}: no such type: ${rest}`);
    family.type = rest;
  } else if (what === 'UNIT') {
    if (!family.name.endsWith(`_${rest}`)) throw new Error(`${family.name} does not end with its unit ${rest}`);
    family.unit = rest;
  } else {
    if (!new RegExp(`^${escapedText}$`).test(rest)) throw new Error(`${family.name}: help is not escaped`);
    family.help = unescaped(rest);
  }
}

const isOf = (family: ReadFamily, name: string): boolean =>
  (suffixes[family.type] ?? []).some((suffix) => name === `${family.name}${suffix}`);

function readSample(line: string): ReadSample {
  const [, name, inside, number = ''] = sampleLine.exec(line) ?? [];
  if (name === undefined) throw new Error(`${line}: is no sample`);
  return { name, labels: inside === undefined ? {} : readLabels(inside, line), value: readNumber(number, line) };
}

function readLabels(inside: string, line: string): Record<string, string> {
  const labels: Record<string, string> = {};
  label.lastIndex = 0;
  while (label.lastIndex < inside.length) {
    const [, name, value] = label.exec(inside) ?? [];
    if (name === undefined || value === undefined) throw new Error(`${line}: labels are none`);
    if (name in labels) throw new Error(`${line}: ${name} stands there twice`);
    labels[name] = unescaped(value);
  }
  return labels;
}

function readNumber(text: string, line: string): number {
  if (/^nan$/i.test(text)) return Number.NaN;
  const infinite = /^([+-]?)(inf|infinity)$/i.exec(text);
  if (infinite !== null) return infinite[1] === '-' ? -Infinity : Infinity;
  if (!realNumber.test(text)) throw new Error(`${line}: ${text} is no number`);
  return Number(text);
}

const unescaped = (text: string): string =>
  text.replaceAll(/\\(.)/g, (_, character: string) => (character === 'n' ? '\n' : character));

function check({ name, type, samples }: ReadFamily): void {
  const seen = new Set(samples.map((one) => JSON.stringify([one.name, Object.entries(one.labels).sort()])));
  if (seen.size < samples.length) throw new Error(`${name}: two samples with the same labels`);
  if (type === 'counter' && samples.some(({ value }) => !(value >= 0))) throw new Error(`${name} is below zero`);
  if (type === 'info' && samples.some(({ value }) => value !== 1)) throw new Error(`${name} is not 1`);
  if (type === 'histogram') checkHistogram(name, samples);
}

function checkHistogram(name: string, samples: readonly ReadSample[]): void {
  const buckets = samples.filter((one) => one.name === `${name}_bucket`);
  const bounds = buckets.map(({ labels }) => readNumber(labels['le'] ?? '', name));
  const rising = (values: readonly number[], strict: boolean): boolean =>
    values.every((value, i) => i === 0 || (strict ? value > (values[i - 1] ?? 0) : value >= (values[i - 1] ?? 0)));
  if (!rising(bounds, true) || bounds.at(-1) !== Infinity) throw new Error(`${name}: bounds do not rise to +Inf`);
  const counts = buckets.map(({ value }) => value);
  if (!rising(counts, false)) throw new Error(`${name}: buckets are not cumulative`);
  const count = samples.find((one) => one.name === `${name}_count`)?.value;
  if (count !== counts.at(-1)) throw new Error(`${name}: the count is not that of +Inf`);
}
