import type { SiteFile } from '@ebbline/shared/contract/site-file';
import type { TemplateInFile, UnitInFile } from '@ebbline/shared/contract/site-file-unit';
import type { FaultList, FaultPath } from './site-fault';

/** A unit with its templates merged in, and where each of its keys was written. */
export interface MergedUnit {
  readonly id: string;
  readonly unit: UnitInFile;
  /** From keys inside the unit to the path in the file: in the unit or template that has most of it, the nearest first. */
  readonly at: (...keys: readonly (string | number)[]) => FaultPath;
}

type Tree = Readonly<Record<string, unknown>>;

const isTree = (value: unknown): value is Tree => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Maps merge key by key, the nearer wins; lists and texts are taken whole. */
function merge(far: Tree, near: Tree): Tree {
  const merged: Record<string, unknown> = { ...far };
  for (const [key, value] of Object.entries(near)) {
    const before = merged[key];
    merged[key] = isTree(before) && isTree(value) ? merge(before, value) : value;
  }
  return merged;
}

/**
 * `~` in the nearest place takes away what a template gave. What has none in it comes back as it is, so that the
 * units of a template share one and the same object; `known` remembers what was looked through already.
 */
function withoutNulls(tree: Tree, known: WeakMap<Tree, Tree>): Tree {
  const found = known.get(tree);
  if (found !== undefined) return found;
  const kept: Record<string, unknown> = {};
  let changed = false;
  for (const [key, value] of Object.entries(tree)) {
    const inner = isTree(value) ? withoutNulls(value, known) : value;
    if (inner !== null) kept[key] = inner;
    if (inner !== value || inner === null) changed = true;
  }
  const result = changed ? kept : tree;
  known.set(tree, result);
  return result;
}

/** How many of the keys, from the first on, the tree has. */
function depthOf(tree: unknown, keys: readonly (string | number)[]): number {
  let value: unknown = tree;
  let depth = 0;
  for (const key of keys) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return depth;
    value = (value as Record<string | number, unknown>)[key];
    depth += 1;
  }
  return depth;
}

/** A unit's own keys first, then its template's, then that one's template's. */
function chainOf(file: SiteFile, id: string, unit: UnitInFile, faults: FaultList) {
  const chain: { readonly path: FaultPath; readonly keys: TemplateInFile | UnitInFile }[] = [];
  let path: FaultPath = ['units', id];
  let keys: TemplateInFile | UnitInFile = unit;
  const passed = new Set<string>();
  for (;;) {
    chain.push({ path, keys });
    const name = keys.template;
    if (name === undefined) return chain;
    const template = file.templates?.[name];
    if (template === undefined) {
      faults.add([...path, 'template'], `there is no template "${name}"; give it under templates or correct the name`);
      return chain;
    }
    if (passed.has(name)) {
      faults.add([...path, 'template'], `template "${name}" leads back to itself; take one of these names out`);
      return chain;
    }
    passed.add(name);
    path = ['templates', name];
    keys = template;
  }
}

export function mergeTemplates(file: SiteFile, faults: FaultList): readonly MergedUnit[] {
  const known = new WeakMap<Tree, Tree>();
  return Object.entries(file.units).map(([id, own]) => {
    const chain = chainOf(file, id, own, faults);
    const merged = chain.reduceRight<Tree>((far, { keys }) => merge(far, keys), {});
    return {
      id,
      // In limits `~` means something: back to the catalogue. It is read there.
      unit: {
        ...withoutNulls(merged, known),
        ...(isTree(merged.limits) ? { limits: merged.limits } : {}),
      } as UnitInFile,
      at: (...keys) => {
        const depths = chain.map((link) => depthOf(link.keys, keys));
        const best = chain[depths.indexOf(Math.max(...depths))];
        return [...(best?.path ?? ['units', id]), ...keys];
      },
    };
  });
}
