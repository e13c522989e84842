import { z } from 'zod';

/** What the simulator of the demo site can be told, and what is going on in its plants. It says so itself, retained. */
const choiceSchema = z.object({
  key: z.string(),
  title: z.string(),
  values: z.array(z.string()),
  usual: z.string(),
  anyNumber: z.boolean().optional().describe('true: any number between the first and the last value is taken'),
});

export const demoFaultKindSchema = z.object({
  id: z.string(),
  title: z.string(),
  kind: z.enum(['fault', 'operation']),
  about: z.string().describe('what happens in the plant, in one sentence'),
  units: z.array(z.string()),
  needsBranch: z.boolean(),
  choices: z.array(choiceSchema).describe('further keys of the command'),
});
export type DemoFaultKind = z.infer<typeof demoFaultKindSchema>;

export const demoActiveSchema = z.object({
  id: z.string().describe('fault or operation'),
  unit: z.string(),
  branch: z.string().nullable(),
  forSeconds: z.number(),
  repaired: z.boolean(),
  strength: z.number().describe('0 to 1'),
  keys: z.record(z.string(), z.string()),
});

export const demoStateSchema = z.object({
  running: z.boolean().describe('false: nothing was heard of the simulator'),
  units: z.array(z.object({ id: z.string(), branches: z.array(z.string()) })),
  kinds: z.array(demoFaultKindSchema),
  active: z.array(demoActiveSchema),
  refused: z.object({ command: z.string(), code: z.string(), message: z.string() }).nullable(),
});
export type DemoState = z.infer<typeof demoStateSchema>;

/** Goes to the simulator as it is; what it thinks of it stands in the next `DemoState`. */
export const demoCommandSchema = z.strictObject({
  id: z.string().min(1),
  kind: z.enum(['fault', 'operation']),
  unit: z.string().min(1),
  branch: z.string().nullable().default(null),
  action: z.enum(['start', 'repair']).default('start'),
  keys: z.record(z.string(), z.string()).default({}),
});
export type DemoCommand = z.infer<typeof demoCommandSchema>;
