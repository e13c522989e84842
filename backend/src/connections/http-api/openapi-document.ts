import { z } from 'zod';
import type { Right } from '@ebbline/shared/contract/people';
import { exportRoutes } from '@ebbline/shared/contract/export-routes';
import { routeKey, routeTable } from '@ebbline/shared/contract/route-table';
import { problemSchema } from '@ebbline/shared/contract/problem';
import { statusesOf } from './fault-codes';
import { routeTexts } from './route-texts';

type Route = (typeof routeTable)[number];
type JsonSchema = Record<string, unknown>;

/** The OpenAPI 3.0.3 document, made from the same table and schemas that the routes are held to. */
export function openApiDocument(version: string): JsonSchema {
  const paths: Record<string, Record<string, unknown>> = {};
  for (const route of routeTable) paths[route.path] = { ...paths[route.path], [route.method]: operation(route) };
  for (const route of exportRoutes) paths[route.path] = { get: exportOperation(route) };
  paths['/api/metrics'] = { get: metricsOperation };
  return {
    openapi: '3.0.3',
    info: {
      title: 'Ebbline',
      version,
      description:
        'Watches negative-pressure liquid-cooling loops. It monitors; it is no safety system. Times are ISO 8601 UTC.',
    },
    paths,
    components: { securitySchemes, schemas: { Problem: schemaOf(problemSchema, 'output') } },
  };
}

/** Files to take along: CSV or JSON, as asked for. */
const exportOperation = (route: (typeof exportRoutes)[number]): JsonSchema => ({
  operationId: route.operationId,
  summary: route.summary,
  ...securityOf(route),
  parameters: queryParameters(route.query),
  responses: {
    200: {
      description: 'As asked for.',
      content: {
        'text/csv': { schema: { type: 'string', description: 'RFC 4180, with a header line.' } },
        'application/json': { schema: { type: 'object', additionalProperties: true } },
      },
    },
    ...problemsOf({ ...route, method: 'get', body: null }),
  },
});

/** The one answer that is plain text: it stands in no table of JSON routes. */
const metricsOperation: JsonSchema = {
  operationId: 'metrics',
  summary: 'What the program counts of itself, as OpenMetrics 1.0 text.',
  parameters: [],
  responses: {
    200: {
      description: 'As asked for.',
      content: { 'application/openmetrics-text; version=1.0.0; charset=utf-8': { schema: { type: 'string' } } },
    },
  },
};

function operation(route: Route): JsonSchema {
  const { operationId, summary } = routeTexts[routeKey(route)];
  return {
    operationId,
    summary,
    ...securityOf(route),
    parameters: [...pathParameters(route.path), ...queryParameters(route.query)],
    ...(route.body === null ? {} : { requestBody: { required: true, content: json(schemaOf(route.body, 'input')) } }),
    responses: {
      200: { description: 'As asked for.', content: json(schemaOf(route.reply, 'output')) },
      ...problemsOf(route),
    },
  };
}

const problemsOf = (route: Parameters<typeof statusesOf>[0]): JsonSchema =>
  Object.fromEntries([...statusesOf(route)].map(([status, codes]) => [status, problem(codes)]));

/** How a caller shows who it is: a browser by the cookie of its session, a machine by a token. */
const securitySchemes: JsonSchema = {
  session: {
    type: 'apiKey',
    in: 'cookie',
    name: 'ebbline-session',
    description:
      'Over TLS `__Host-ebbline-session`. Every POST also sends X-Ebbline-Csrf as GET /api/session gives it.',
  },
  token: { type: 'http', scheme: 'bearer', description: 'Made and withdrawn at /api/tokens.' },
};

/** Which right a route asks for; OpenAPI 3.0 has a place for scopes of OAuth only, so it is said in words too. */
const securityOf = ({ right }: { readonly right: Right | null }): JsonSchema =>
  right === null
    ? { security: [] }
    : { security: [{ session: [] }, { token: [] }], description: `Needs the right \`${right}\`.`, 'x-right': right };

const json = (schema: JsonSchema): JsonSchema => ({ 'application/json': { schema } });

const problem = (codes: readonly string[]): JsonSchema => ({
  description: `A problem (RFC 9457); \`code\` is ${codes.join(' or ')}.`,
  content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
});

const schemaOf = (schema: z.ZodType, io: 'input' | 'output'): JsonSchema => {
  const described = z.toJSONSchema(schema, { target: 'openapi-3.0', io }) as JsonSchema;
  return Object.fromEntries(Object.entries(described).filter(([key]) => key !== '$schema'));
};

const pathParameters = (path: string): JsonSchema[] =>
  [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string' },
  }));

function queryParameters(query: z.ZodObject | null): JsonSchema[] {
  if (query === null) return [];
  const { properties, required } = schemaOf(query, 'output') as {
    properties: Record<string, JsonSchema>;
    required?: string[];
  };
  return Object.entries(properties).map(([name, schema]) => ({
    name,
    in: 'query',
    required: required?.includes(name) === true && !('default' in schema),
    schema,
  }));
}
