import type { TopicPlan } from '../site/compiled-site';
import { fieldAt } from './field-at';

/** Where the values of a topic's payload stand, arranged so that an object which holds several is looked up once. */
export interface FieldPlan {
  /** Paths of the objects that values stand in, each once. */
  readonly parents: readonly (readonly string[])[];
  /** By binding: its object in `parents`, and its key there. */
  readonly parentOf: Uint16Array;
  readonly keys: readonly string[];
}

export function planFields({ bindings }: TopicPlan): FieldPlan {
  const places = new Map<string, number>();
  const parents: (readonly string[])[] = [];
  const parentOf = Uint16Array.from(bindings, ({ path }) => {
    const parent = path.slice(0, -1);
    const name = parent.join('\u0000');
    const known = places.get(name);
    if (known !== undefined) return known;
    places.set(name, parents.length);
    return parents.push(parent) - 1;
  });
  return { parents, parentOf, keys: bindings.map(({ path }) => path.at(-1) ?? '') };
}

/** Looks up the objects of one document; `into` is written again for each message. */
export function findParents({ parents }: FieldPlan, document: unknown, into: unknown[]): void {
  for (let i = 0; i < parents.length; i += 1) into[i] = fieldAt(document, parents[i] ?? []);
}

/** The value of a binding, as `fieldAt` gives it; after `findParents`. */
export function plannedField(plan: FieldPlan, found: readonly unknown[], binding: number): unknown {
  const parent = found[plan.parentOf[binding] ?? 0];
  if (typeof parent !== 'object' || parent === null) return undefined;
  const value = (parent as Record<string, unknown>)[plan.keys[binding] ?? ''];
  return typeof value === 'function' ? undefined : value;
}
