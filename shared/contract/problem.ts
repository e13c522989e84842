import { z } from 'zod';

/** RFC 9457. `code` is stable; `type` is `urn:ebbline:problem:<code>`. */
export const problemSchema = z.looseObject({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string(),
  instance: z.string(),
  code: z.string(),
});
export type Problem = z.infer<typeof problemSchema>;
