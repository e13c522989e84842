import { z } from 'zod';
import { isoTimeSchema } from './reading';

/** Each may do all that the one before may. */
export const roles = ['viewer', 'operator', 'engineer', 'admin'] as const;
export const roleSchema = z.enum(roles);
export type Role = z.infer<typeof roleSchema>;

/** What a route or an event asks of who calls it; which role has which stands in `backend/src/access/rights-of-role.ts`. */
export const rights = [
  'look',
  'acknowledge',
  'permit',
  'measure',
  'shelve',
  'note',
  'tryLimits',
  'changeSite',
  'changeLimits',
  'outOfService',
  'commandDemo',
  'readAudit',
  'managePeople',
] as const;
export const rightSchema = z.enum(rights);
export type Right = z.infer<typeof rightSchema>;

const nameSchema = z.string().trim().min(1).max(80);
/** Length alone is asked for, and any characters are taken (NIST SP 800-63B section 3.1.1.2; ASVS 5.0 V6.2). */
const passwordSchema = z.string().min(12).max(256);
/** As typed at a sign-in: no rule but the bound, so that a refusal tells nothing of the rules. */
const typedPasswordSchema = z.string().min(1).max(256);
const secretSchema = z.string().min(1).max(200);
/** In the body of an action: the one who sends it, or nothing is done. */
export const operatorSchema = nameSchema
  .optional()
  .describe('the name of the one who is signed in, or of the token; may be left out');

/** Who looks at the screen, and how one may sign in. */
export const sessionSchema = z.object({
  person: z
    .object({
      name: z.string(),
      role: roleSchema,
      rights: z.array(rightSchema),
      by: z.enum(['password', 'openId', 'demo', 'token']),
    })
    .nullable()
    .describe('null: nobody is signed in'),
  csrf: z.string().nullable().describe('send as header X-Ebbline-Csrf with every action; null without a session'),
  endsAt: isoTimeSchema.nullable().describe('when the session ends at the latest'),
  idleEndsAt: isoTimeSchema.nullable().describe('when it ends unless someone acts; null: does not end by idling'),
  ways: z.object({
    password: z.boolean(),
    demo: z.boolean().describe('one click under a name, on the demo site and at this machine only'),
    openId: z.object({ label: z.string() }).nullable(),
  }),
  setUpNeeded: z.boolean().describe('true until the first admin exists'),
});
export type SessionState = z.infer<typeof sessionSchema>;

export const signInRequestSchema = z.strictObject({ name: nameSchema, password: typedPasswordSchema });
export type SignInRequest = z.infer<typeof signInRequestSchema>;
export const demoSignInRequestSchema = z.strictObject({ name: nameSchema });
export type DemoSignInRequest = z.infer<typeof demoSignInRequestSchema>;
export const endSessionRequestSchema = z.strictObject({
  everywhere: z.boolean().default(false).describe('true: ends all sessions of this person'),
});
export const changePasswordRequestSchema = z.strictObject({ old: typedPasswordSchema, password: passwordSchema });
export type ChangePasswordRequest = z.infer<typeof changePasswordRequestSchema>;
/** The first admin, by the link that the first start printed; later also anyone, by a link that an admin handed over. */
export const setUpRequestSchema = z.strictObject({
  link: secretSchema.describe('the part of the link after #'),
  name: nameSchema.optional().describe('the first admin chooses; otherwise the admin who made the link chose'),
  password: passwordSchema,
});
export type SetUpRequest = z.infer<typeof setUpRequestSchema>;

export const personSchema = z.object({
  id: z.string(),
  name: z.string(),
  role: roleSchema,
  enabled: z.boolean(),
  by: z.enum(['password', 'openId']),
  waiting: z.boolean().describe('true: has not set a password yet by the link'),
  addedAt: isoTimeSchema,
  lastSignInAt: isoTimeSchema.nullable(),
});
export type PersonRow = z.infer<typeof personSchema>;
export const personListSchema = z.object({ people: z.array(personSchema) });
export const addPersonRequestSchema = z.strictObject({ name: nameSchema, role: roleSchema });
export type AddPersonRequest = z.infer<typeof addPersonRequestSchema>;
export const changePersonRequestSchema = z.strictObject({
  role: roleSchema.optional(),
  enabled: z.boolean().optional(),
  reason: z.string().trim().min(1).max(1000),
});
export type ChangePersonRequest = z.infer<typeof changePersonRequestSchema>;
/** Shown once. */
export const personLinkSchema = z.object({
  person: personSchema,
  link: z.string().describe('path with fragment, to be opened within `endsAt`'),
  endsAt: isoTimeSchema,
});
export type PersonLink = z.infer<typeof personLinkSchema>;

/** A machine's way in. */
export const tokenSchema = z.object({
  id: z.string(),
  name: z.string(),
  rights: z.array(rightSchema),
  addedBy: z.string(),
  addedAt: isoTimeSchema,
  endsAt: isoTimeSchema,
  lastUsedAt: isoTimeSchema.nullable(),
  withdrawnAt: isoTimeSchema.nullable(),
});
export type TokenRow = z.infer<typeof tokenSchema>;
export const tokenListSchema = z.object({ tokens: z.array(tokenSchema) });
export const addTokenRequestSchema = z.strictObject({
  name: nameSchema,
  rights: z
    .array(rightSchema.exclude(['managePeople', 'readAudit']))
    .min(1)
    .max(rights.length),
  days: z.number().int().min(1).max(366),
});
export type AddTokenRequest = z.infer<typeof addTokenRequestSchema>;
/** Shown once. */
export const newTokenSchema = z.object({ token: tokenSchema, secret: z.string() });
export type NewToken = z.infer<typeof newTokenSchema>;
/** Actions that take nothing but the address they are sent to. */
export const nothingSchema = z.strictObject({});
export const reasonRequestSchema = z.strictObject({ reason: z.string().trim().min(1).max(1000) });
