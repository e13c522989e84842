import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument, visit, type Document } from 'yaml';
import type { LineFault } from './line-fault';

export interface YamlDocument {
  /** Plain objects, lists, texts, numbers. */
  readonly value: unknown;
  /** Line of the deepest key of the path that the file has; 1 for the root. */
  readonly lineOf: (path: readonly (string | number)[]) => number;
  /** The same place with its column; both count from 1. */
  readonly placeOf: (path: readonly (string | number)[]) => TextPlace;
}

export interface TextPlace {
  readonly line: number;
  readonly column: number;
}

function placeFinder(document: Document, lines: LineCounter): YamlDocument['placeOf'] {
  const placeAt = (range: readonly number[] | null | undefined, otherwise: TextPlace): TextPlace =>
    range?.[0] === undefined ? otherwise : placeIn(lines, range[0]);
  return (path) => {
    let node: unknown = document.contents;
    let place: TextPlace = { line: 1, column: 1 };
    for (const part of path) {
      if (isAlias(node)) node = node.resolve(document);
      if (isMap(node)) {
        const pair = node.items.find(({ key }) => isScalar(key) && String(key.value) === String(part));
        if (pair === undefined) return place;
        if (isScalar(pair.key)) place = placeAt(pair.key.range, place);
        node = pair.value;
      } else if (isSeq(node)) {
        const item = node.items[Number(part)];
        if (item === undefined) return place;
        if (isScalar(item) || isMap(item) || isSeq(item)) place = placeAt(item.range, place);
        node = item;
      } else {
        return place;
      }
    }
    return place;
  };
}

function placeIn(lines: LineCounter, offset: number): TextPlace {
  const { line, col } = lines.linePos(offset);
  return { line, column: col };
}

/** YAML 1.2 → plain data with the line of every key. Duplicate keys are faults. */
export function readYaml(text: string): Result<YamlDocument, readonly LineFault[]> {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true });
  if (document.errors.length > 0)
    return fail(
      document.errors.map((error) => ({
        ...placeIn(lines, error.pos[0]),
        key: '',
        message: `this is not YAML: ${error.message}; correct it there or just above`,
      })),
    );
  const circle = referenceToItself(document);
  if (circle !== null) {
    const message = 'this refers to what it stands in itself; write it out';
    return fail([{ ...placeIn(lines, circle), key: '', message }]);
  }
  try {
    const placeOf = placeFinder(document, lines);
    return ok({ value: document.toJS() as unknown, lineOf: (path) => placeOf(path).line, placeOf });
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    return fail([{ line: 1, key: '', message: `its references cannot be followed: ${why}; write them out` }]);
  }
}

/** Where a reference stands inside of what it refers to: read as data it would have no end. */
function referenceToItself(document: Document): number | null {
  let found: number | null = null;
  visit(document, {
    Alias(_key, alias, path) {
      const target = alias.resolve(document);
      if (target === undefined || !path.includes(target)) return undefined;
      found = alias.range?.[0] ?? 0;
      return visit.BREAK;
    },
  });
  return found;
}
