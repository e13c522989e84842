import { readFile } from 'node:fs/promises';
import type { TriedLines } from '@ebbline/shared/contract/mapping';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { isMap, parseDocument, type Document } from 'yaml';
import { notJudged } from './check-site-text';
import { beside } from './include-reader';
import type { LineFault } from './line-fault';
import { siteFromText } from './read-site-file';
import { readYaml } from './read-yaml';
import { summarizeSite } from './summarize-site';

const kinds = ['halls', 'units'] as const;

/** Puts lines into a copy of the site file and says what would be said of it. The file itself is only read. */
export async function tryLines(file: string, lines: string): Promise<TriedLines> {
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch {
    return { text: null, check: notJudged('the site file cannot be read; check its name and who may read it') };
  }
  const merged = withLines(text, lines);
  if (!merged.ok) return { text: null, check: { ...notJudged(''), faults: [...merged.fault] } };
  const read = siteFromText(merged.value, beside(file));
  const check = read.ok
    ? { accepted: true, summary: summarizeSite(read.value.site), faults: [], warnings: read.value.warnings.map(asTold) }
    : { accepted: false, summary: null, faults: read.fault.map(asTold), warnings: [] };
  return { text: merged.value, check };
}

type Told = TriedLines['check']['faults'][number];
const asTold = ({ line, key, message }: LineFault): Told => ({ line, key, message });

/**
 * The text of a site file with the points of these lines under the halls and units that they name; comments stay. Faults with the
 * line of the added lines.
 */
export function withLines(text: string, lines: string): Result<string, readonly Told[]> {
  const added = readYaml(lines);
  if (!added.ok)
    return fail(added.fault.map((fault) => ({ ...asTold(fault), message: `in the lines: ${fault.message}` })));
  const document = parseDocument(text, { uniqueKeys: true });
  const own = document.errors[0];
  if (own !== undefined) return fail([{ line: null, key: '', message: `the site file is not YAML: ${own.message}` }]);
  const faults: Told[] = [];
  const fault = (path: readonly string[], message: string): void =>
    void faults.push({ line: added.value.lineOf(path), key: path.join('.'), message });
  const whole = mapOf(added.value.value);
  if (whole === null || Object.keys(whole).length === 0)
    return fail([{ line: 1, key: '', message: 'there are no lines; begin with `units:` or `halls:`' }]);
  for (const [kind, holders] of Object.entries(whole)) {
    if (!kinds.some((known) => known === kind)) fault([kind], 'only `units` and `halls` can be put in here');
    else
      for (const [id, holder] of Object.entries(mapOf(holders) ?? {}))
        for (const [key, points] of Object.entries(mapOf(holder) ?? {})) {
          if (key !== 'points') fault([kind, id, key], 'only `points` can be put in here');
          else if (!document.hasIn([kind, id])) fault([kind, id], `the site file has none of this id under ${kind}`);
          else
            for (const [point, line] of Object.entries(mapOf(points) ?? {}))
              put(document, [kind, id, key, point], line, fault);
        }
  }
  return faults.length > 0 ? fail(faults) : ok(document.toString({ lineWidth: 0 }));
}

function put(
  document: Document,
  path: readonly string[],
  line: unknown,
  fault: (path: readonly string[], message: string) => void,
): void {
  if (document.hasIn(path)) {
    fault(path, 'stands in the site file already; take that line out of it first');
    return;
  }
  const points = path.slice(0, -1);
  try {
    if (!isMap(document.getIn(points))) document.setIn(points, document.createNode({}));
    document.setIn(path, document.createNode(line, { flow: true }));
  } catch {
    // What is written once and referred to from here would change wherever it is referred to.
    fault(path, 'the site file refers to other lines here; write them out, and try again');
  }
}

const mapOf = (value: unknown): Readonly<Record<string, unknown>> | null =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : null;
