import type { z } from 'zod';
import { ProblemError } from './problem-error';

/** The input as the schema has it, or a problem that names every member that is wrong, never its value. */
export function checkInput<Schema extends z.ZodType>(
  schema: Schema,
  input: unknown,
  code: 'QUERY_MALFORMED' | 'BODY_MALFORMED',
): z.output<Schema> {
  const checked = schema.safeParse(input);
  if (checked.success) return checked.data;
  const errors = checked.error.issues.map((issue) => ({
    member: issue.path.map(String).join('.'),
    message: issue.message,
  }));
  const told = errors.map(({ member, message }) => (member === '' ? message : `${member}: ${message}`)).join('; ');
  throw new ProblemError(code, `${told}. See /api/openapi.json.`, { errors });
}
