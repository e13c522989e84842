import { z } from 'zod';
import { limitsSchema } from './site-file-limits';
import { idSchema, pathSchema, pointsSchema, senderQualitySchema, timeSchema, topicSchema } from './site-file-points';
import { quantity } from './site-file-quantity';
import { templateSchema, unitSchema } from './site-file-unit';

const siteHeadSchema = z
  .strictObject({
    id: idSchema.describe('Short id; fills `{site}` in topics.'),
    name: z.string().min(1).describe('As screens show it.'),
    timeZone: z
      .string()
      .min(1)
      .describe('IANA name of the time zone in which screens print times, such as `Europe/Oslo`.'),
    altitude: quantity(
      'length',
      '120 m',
      'Height above sea level. Ambient pressure is told from it while no barometer reads.',
    ),
    demo: z
      .boolean()
      .optional()
      .describe('`true` for the demo site: said on every screen, and the simulator may feed it.'),
  })
  .describe('The site as a whole.');

const intakeSchema = z
  .strictObject({
    maximumPayloadBytes: z
      .number()
      .int()
      .min(64)
      .max(16_777_216)
      .optional()
      .describe('Longer payloads are refused unread. Default 65536.'),
    futureTolerance: quantity(
      'duration',
      '10 s',
      'A source time further ahead of the arrival is refused. Default 10 s. (On the source clock: a day.)',
    ).optional(),
    oldestSample: quantity('duration', '7 d', 'A source time further back is refused. Default 7 d.').optional(),
    subscriptions: z
      .array(z.string().min(1))
      .optional()
      .describe(
        'MQTT filters (with `+` and `#`) to subscribe to in place of single topics; topics that none covers are added.',
      ),
  })
  .describe('Rules for what arrives.');

const hallSchema = z
  .strictObject({
    name: z.string().min(1).describe('As screens show it.'),
    topic: topicSchema.optional().describe("The hall's common topic: one JSON object with many points."),
    time: timeSchema.optional(),
    quality: senderQualitySchema.optional(),
    points: pointsSchema.optional(),
    limits: limitsSchema.optional(),
  })
  .describe('One data hall.');
export type HallInFile = z.infer<typeof hallSchema>;

const gatewaySchema = z
  .strictObject({
    status: z
      .strictObject({
        topic: topicSchema,
        online: z
          .string()
          .min(1)
          .describe('The payload that means that it is there; every other one means that it is gone.'),
        path: pathSchema.optional(),
      })
      .optional()
      .describe('A retained status topic, with a last will for the case that the connection is lost.'),
  })
  .describe('A node that sends the telemetry of several units.');

const loopSchema = z
  .strictObject({
    name: z.string().min(1).optional().describe('As screens show it. Default: the id.'),
    units: z.array(idSchema).min(1).describe('The units on it.'),
    unitsNeeded: z
      .number()
      .int()
      .min(1)
      .optional()
      .describe('How many of them carry rated load; the rest is redundancy (N+1). Default: all.'),
  })
  .describe('One water path that several units share: water may walk between their tanks.');

/** The whole site file. Keys it does not know are refused. */
export const siteFileSchema = z
  .strictObject({
    site: siteHeadSchema,
    intake: intakeSchema.optional(),
    include: z
      .array(z.string())
      .optional()
      .describe(
        'Files whose templates are taken in: `rich`, `usual` or `poor` (sensor sets that come with Ebbline), or a file beside this one, such as `racks.yaml`.',
      ),
    templates: z
      .record(idSchema, templateSchema)
      .optional()
      .describe('Templates by id; a template may name another one.'),
    halls: z.record(idSchema, hallSchema).describe('Halls by id.'),
    gateways: z
      .record(idSchema, gatewaySchema)
      .optional()
      .describe('Gateways by id, where several units share one or it tells its status.'),
    loops: z
      .record(idSchema, loopSchema)
      .optional()
      .describe('Loops by id, where several units share one. A unit on none has one of its own.'),
    units: z.record(idSchema, unitSchema).describe('Units by id; fills `{unit}` in topics.'),
    limits: limitsSchema.optional(),
  })
  .describe('Site file of Ebbline (YAML).');
export type SiteFile = z.infer<typeof siteFileSchema>;
