import { z } from 'zod';
import { siteFileSchema } from './site-file';

/** One key of the site file as the reference lists it. `<id>` stands for an id that the file chooses. */
export interface SiteFileKey {
  readonly path: string;
  readonly expects: string;
  readonly needed: boolean;
  readonly description: string;
}

type Schema = z.core.$ZodType;

/** Takes off what only says "may be left out". */
function bare(schema: Schema): Schema {
  const inner = schema instanceof z.ZodOptional || schema instanceof z.ZodNullable ? schema.unwrap() : null;
  return inner === null ? schema : bare(inner);
}

const shapeOf = (schema: Schema): Readonly<Record<string, Schema>> | null =>
  schema instanceof z.ZodObject ? schema.shape : null;

function describedBy(schema: Schema): string {
  const own = z.globalRegistry.get(schema)?.description;
  if (own !== undefined) return own;
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodNullable) return describedBy(schema.unwrap());
  return '';
}

function expects(schema: Schema): string {
  if (schema instanceof z.ZodEnum) return schema.options.map((option) => `\`${String(option)}\``).join(', ');
  if (schema instanceof z.ZodBoolean) return '`true`, `false`';
  if (schema instanceof z.ZodNumber) return 'number';
  if (schema instanceof z.ZodString) return 'text';
  if (schema instanceof z.ZodArray) return `list of ${expects(bare(schema.element))}`;
  if (schema instanceof z.ZodUnion) return schema.options.map((option) => expects(bare(option))).join(' or ');
  if (schema instanceof z.ZodRecord) return 'map by id';
  return 'map';
}

/** The keys that may stand at a place, for the message about one that may not. */
export function knownKeysAt(path: readonly (string | number)[]): readonly string[] {
  let schema: Schema = siteFileSchema;
  for (const part of path) {
    const here = bare(schema);
    const next =
      here instanceof z.ZodRecord
        ? here.valueType
        : here instanceof z.ZodArray
          ? here.element
          : shapeOf(here)?.[String(part)];
    if (next === undefined) return [];
    schema = next;
  }
  return Object.keys(shapeOf(bare(schema)) ?? {});
}

/** Every key, in the order of the schema; a unit's keys once, since a template has the same. */
export function siteFileKeys(): readonly SiteFileKey[] {
  const rows: SiteFileKey[] = [];
  const seen = new Map<Schema, string>();
  const walk = (schema: Schema, path: string): void => {
    const here = bare(schema);
    const known = seen.get(here);
    if (known !== undefined) return;
    if (here instanceof z.ZodRecord) {
      seen.set(here, path);
      const value = bare(here.valueType);
      if (shapeOf(value) === null) return;
      const inner = `${path}.<id>`;
      rows.push({ path: inner, expects: 'map', needed: false, description: describedBy(value) });
      walk(value, inner);
    } else if (here instanceof z.ZodArray) {
      walk(here.element, `${path}[]`);
    } else {
      const shape = shapeOf(here);
      if (shape === null) return;
      seen.set(here, path);
      for (const [key, child] of Object.entries(shape)) {
        const childPath = path === '' ? key : `${path}.${key}`;
        const before = seen.get(bare(child));
        rows.push({
          path: childPath,
          expects: before === undefined ? expects(bare(child)) : `as \`${before}\``,
          needed: !(child instanceof z.ZodOptional),
          description: describedBy(child),
        });
        walk(child, childPath);
      }
    }
  };
  walk(siteFileSchema, '');
  return rows;
}
