import type { z } from 'zod';
import type { Right } from './people';

/** What a row of a route table says. */
export interface RouteRow {
  readonly method: 'get' | 'post';
  readonly path: `/api/${string}`;
  /** What who calls it must have; null: open to anyone whom the edge lets in. */
  readonly right: Right | null;
  readonly reply: z.ZodType;
  readonly query: z.ZodObject | null;
  readonly body: z.ZodObject | null;
  /** Codes of its own, beside those of every route. */
  readonly faults: readonly string[];
}
