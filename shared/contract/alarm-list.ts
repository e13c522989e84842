import { z } from 'zod';
import { prioritySchema } from './alarm';
import { alarmSettingsSchema, proposedSettingsSchema, seenSettingsSchema, settingScopeSchema } from './alarm-settings';
import { operatorSchema } from './people';
import { isoTimeSchema } from './reading';

const gradeSchema = z.union([prioritySchema, z.literal('alert')]);
const severitySchema = z.enum(['severe', 'major', 'minor']);

/** One place where an entry is set: what the authorised list says there, and what runs. */
export const listedSettingSchema = z.object({
  scope: settingScopeSchema,
  authorised: alarmSettingsSchema,
  running: alarmSettingsSchema,
  differs: z.array(z.string()).describe('members in which running and authorised differ; empty: as authorised'),
});
export type ListedSetting = z.infer<typeof listedSettingSchema>;

/** Why an alarm exists and how it is set: what ISA-TR18.2.2-2016 asks of a rationalized alarm. */
export const listedAlarmSchema = z.object({
  entry: z.string(),
  title: z.string(),
  judged: z.enum(['unit', 'branch', 'plate', 'loop', 'hall', 'point', 'gateway', 'program']),
  type: z.enum(['absolute', 'deviation', 'rate', 'discrete', 'instrument', 'calculated']),
  cause: z.string(),
  consequence: z.string(),
  actions: z.array(z.object({ shape: z.enum(['a', 'b', 'c']), text: z.string() })),
  confirm: z.string(),
  timeToRespondSeconds: z.number(),
  timeNeededSeconds: z.number().describe('what the first action takes; less than the time to respond'),
  severity: severitySchema,
  priority: gradeSchema.describe('computed from severity and time to respond'),
  worse: z
    .object({ severity: severitySchema, timeToRespondSeconds: z.number(), when: z.string(), priority: gradeSchema })
    .nullable(),
  class: z.string().describe('class with rules of its own, such as water or air; see the texts'),
  latching: z.boolean(),
  basis: z.string().describe('what the limit rests on'),
  designLimit: z.string().nullable().describe('the limit of the plant behind it'),
  offInModes: z.array(z.string()),
  suppressedBy: z.array(z.string()).describe('entries under which it folds'),
  owner: z.string(),
  reviewBy: z.string().nullable().describe('date of the next review, YYYY-MM-DD'),
  changeLink: z.string().nullable().describe('where the change was approved'),
  unit_of_measure: z
    .string()
    .nullable()
    .describe('UCUM code of limit, low and deadband; null: no limit that could be set'),
  side: z
    .enum(['above', 'below', 'band', 'ends'])
    .nullable()
    .optional()
    .describe('on which side of the limit it stands; `ends`: below low of one thing, above the limit of another'),
  hasDeadband: z.boolean().optional().describe('false: its rule looks at none, so that none can be set'),
  changeable: z.boolean().optional().describe('false: judged by rules of the program itself, none of it can be set'),
  scopes: z
    .array(z.enum(['site', 'hall', 'unit']))
    .optional()
    .describe('for what it can be set'),
  stateDependent: z.string().nullable().optional().describe('in which modes or circumstances the limit is another one'),
  classTitle: z.string().optional(),
  highlyManaged: z.boolean().optional().describe('class with rules of its own for drill, review and change'),
  configured: z
    .number()
    .int()
    .optional()
    .describe('alarms of this entry that the site can tell: of units, branches, plates'),
  settings: z.array(listedSettingSchema).describe('the site first, then halls and units where they differ from it'),
});
export type ListedAlarm = z.infer<typeof listedAlarmSchema>;

export const alarmListingSchema = z.object({
  time: isoTimeSchema,
  authorisedBy: z.object({
    file: z.string().nullable().describe('name of the authorised list; null: catalogue and site file are the list'),
    version: z.string().nullable(),
    approvedBy: z.string().nullable(),
    approvedOn: z.string().nullable(),
    refused: z
      .array(z.string())
      .optional()
      .describe('what is wrong with a newer content of the file, by line and column; the one before stays in force'),
  }),
  /** Share of entries at priority 1, of those that are alarms. */
  shareOfPriority1: z.number(),
  configured: z
    .object({
      alarms: z
        .number()
        .int()
        .describe('alarms that the site can tell, of every unit, branch, plate, point and gateway'),
      priority1: z.number().int().describe('of these, at priority 1'),
    })
    .describe('the same, counted by the alarms of this site that are in use, as they are configured'),
  entries: z.array(listedAlarmSchema),
});
export type AlarmListing = z.infer<typeof alarmListingSchema>;

export const alarmListingQuerySchema = z.strictObject({
  search: z.string().max(200).optional().describe('part of an entry, a title, a cause, a consequence or an action'),
  differing: z.enum(['true', 'false']).optional().describe('true: only entries that run otherwise than authorised'),
});

export const changeSettingsRequestSchema = z.strictObject({
  operator: operatorSchema,
  entry: z.string().min(1),
  scope: settingScopeSchema,
  set: proposedSettingsSchema,
  basedOn: seenSettingsSchema
    .optional()
    .describe('what was seen in force there; where something else runs by now, nothing is changed'),
  unit_of_measure: z
    .string()
    .nullable()
    .optional()
    .describe('UCUM code of the numbers; where it is given it must be that of the entry'),
  reason: z.string().trim().min(3).max(1000),
  link: z
    .string()
    .trim()
    .max(500)
    .default('')
    .describe('where the change was approved; of a highly managed class it may not be empty'),
});
export type ChangeSettingsRequest = z.infer<typeof changeSettingsRequestSchema>;

/** Why a change is not made, beside faults that every action may have. */
export const changeSettingsFaults = [
  'SETTING_ENTRY_UNKNOWN',
  'SETTING_SCOPE_UNKNOWN',
  'SETTING_SCOPE',
  'SETTING_FIXED',
  'SETTING_ABSENT',
  'SETTING_RANGE',
  'SETTING_BAND',
  'SETTING_DEADBAND',
  'SETTING_STEPS',
  'SETTING_UNCHANGED',
  'SETTING_UNIT_OF_MEASURE',
  'SETTING_CHANGED_MEANWHILE',
  'SETTING_LINK',
  'SETTING_SECOND',
  'SETTING_PROPOSED',
] as const;

/** Why a change that waits for a second person is not made, and not withdrawn. */
export const decideProposalFaults = [...changeSettingsFaults, 'SETTING_PROPOSAL_UNKNOWN'] as const;
export type ChangeSettingsFault = (typeof decideProposalFaults)[number];

/** What another person says to a change that waits for one. */
export const decideProposalRequestSchema = z.strictObject({
  operator: operatorSchema,
  decision: z
    .enum(['approve', 'withdraw'])
    .describe('approve: by somebody else than who asked, and by no token; withdraw: by anybody with the right'),
});
export type DecideProposalRequest = z.infer<typeof decideProposalRequestSchema>;

/** Why a change that is on record is not in force: it does not fit the site file or the program that runs now. */
export const refusedChangeSchema = z.object({
  code: z.enum(changeSettingsFaults),
  message: z.string(),
});

/** One change of a setting while the program ran. */
export const settingChangeSchema = z.object({
  id: z.string(),
  time: isoTimeSchema,
  actor: z.string(),
  entry: z.string(),
  scope: settingScopeSchema,
  old: alarmSettingsSchema,
  new: alarmSettingsSchema,
  reason: z.string(),
  link: z.string(),
  approvedBy: z.string().optional().describe('who approved it, where its class is highly managed'),
  held: z
    .enum(['awaitsSecond', 'withdrawn'])
    .optional()
    .describe('nothing was changed: it waits for the approval of a second person, or was withdrawn'),
  refused: refusedChangeSchema.optional().describe('why it is not in force now; left out: it is, or a later one is'),
});
export type SettingChange = z.infer<typeof settingChangeSchema>;
export const settingChangesSchema = z.object({
  changes: z.array(settingChangeSchema).describe('newest first'),
  proposed: z
    .array(settingChangeSchema)
    .optional()
    .describe('not in force, as they wait for a second person; a restart of the program drops them'),
});
export type SettingChanges = z.infer<typeof settingChangesSchema>;

/** Where what runs is not what was authorised. */
export const settingsAuditSchema = z.object({
  time: isoTimeSchema,
  compared: z.number().int().describe('settings that were compared'),
  findings: z.array(
    z.object({
      entry: z.string(),
      scope: settingScopeSchema,
      member: z.string(),
      authorised: z.union([z.number(), z.boolean(), z.string(), z.null()]),
      running: z.union([z.number(), z.boolean(), z.string(), z.null()]),
      unit_of_measure: z.string().nullable(),
      by: z.enum(['change', 'siteFile']).describe('by a recorded change, or by the site file'),
      change: settingChangeSchema.nullable(),
    }),
  ),
  refused: z
    .array(settingChangeSchema)
    .describe('changes on record that no longer fit the site file or the program, and so are not in force'),
});
export type SettingsAudit = z.infer<typeof settingsAuditSchema>;

export const exportQuerySchema = z.strictObject({ format: z.enum(['csv', 'json']) });
