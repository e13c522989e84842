import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { IncludedText, IncludeReader } from './include-reader';
import type { LineFault } from './line-fault';
import { readYaml, type YamlDocument } from './read-yaml';

type Tree = Readonly<Record<string, unknown>>;
type Path = readonly (string | number)[];

export interface WholeDocument {
  /** The site file with the templates of its included files put beside its own. */
  readonly value: unknown;
  /** Where a path stands: line, and the included file where it is not the site file itself. */
  readonly locate: (path: Path) => Pick<LineFault, 'line' | 'file'>;
  readonly included: readonly IncludedText[];
}

const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Puts the templates of included files beside the file's own; a template of one name may be there once. */
export function takeIn(site: YamlDocument, read: IncludeReader): Result<WholeDocument, readonly LineFault[]> {
  const own = (path: Path): Pick<LineFault, 'line' | 'file'> => ({ line: site.lineOf(path) });
  const names = isTree(site.value) ? site.value['include'] : undefined;
  if (!isTree(site.value) || !Array.isArray(names)) return ok({ value: site.value, locate: own, included: [] });

  const faults: LineFault[] = [];
  const included: IncludedText[] = [];
  const ownTemplates = isTree(site.value['templates']) ? site.value['templates'] : {};
  const templates = new Map<string, unknown>();
  const origin = new Map<string, { readonly file: string; readonly lineOf: YamlDocument['lineOf'] }>();
  names.forEach((name: unknown, i) => {
    // What is no text is told by the check of the shape.
    if (typeof name !== 'string') return;
    const fault = (message: string): void =>
      void faults.push({ line: site.lineOf(['include', i]), key: `include.${i}`, message });
    const text = read(name);
    if (!text.ok) {
      fault(text.fault);
      return;
    }
    const { file } = text.value;
    included.push(text.value);
    const yaml = readYaml(text.value.text);
    if (!yaml.ok) return void faults.push(...yaml.fault.map((one) => ({ ...one, file })));
    const { value, lineOf } = yaml.value;
    const inside = (path: Path, message: string): void =>
      void faults.push({ file, line: lineOf(path), key: path.join('.'), message });
    const given = isTree(value) ? value['templates'] : undefined;
    if (!isTree(value) || !isTree(given)) {
      inside([], 'expected templates, and nothing else, in an included file');
      return;
    }
    for (const key of Object.keys(value))
      if (key !== 'templates') inside([key], 'an included file gives templates only; put this into the site file');
    for (const [id, template] of Object.entries(given)) {
      const before = Object.hasOwn(ownTemplates, id) ? 'the site file' : origin.get(id)?.file;
      if (before !== undefined) {
        inside(['templates', id], `${before} has a template "${id}" already; give one of them another name`);
        continue;
      }
      origin.set(id, { file, lineOf });
      templates.set(id, template);
    }
  });
  if (faults.length > 0) return fail(faults);
  return ok({
    value: { ...site.value, templates: { ...Object.fromEntries(templates), ...ownTemplates } },
    locate: (path) => {
      const from = path[0] === 'templates' ? origin.get(String(path[1])) : undefined;
      return from === undefined ? own(path) : { file: from.file, line: from.lineOf(path) };
    },
    included,
  });
}
