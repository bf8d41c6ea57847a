import { z } from 'zod';
import { SECTIONS, STAGES } from '@/lib/measure';
import { OUTCOMES } from '@/lib/store/types';
import { TOKEN_SCOPES, type TokenScope } from '@/lib/store/tokens';
import * as answers from './schemas/answers';
import { report } from './schemas/report';

type Schema = Record<string, unknown>;

const schemaOf = (schema: z.ZodType): Schema => {
  const { $schema: _dialect, ...plain } = z.toJSONSchema(schema);
  return plain;
};

const schemas = {
  BatchReport: schemaOf(report),
  TakenFile: schemaOf(answers.taken),
  RefusedFile: schemaOf(answers.refusedFile),
  Problem: schemaOf(answers.problem),
  Job: schemaOf(answers.job),
  ScheduledReports: schemaOf(answers.scheduledReports),
};

const ref = (name: keyof typeof schemas) => ({ $ref: `#/components/schemas/${name}` });

const inJson = (description: string, name: keyof typeof schemas) => ({
  description,
  content: { 'application/json': { schema: ref(name) } },
});

const refusal = (description: string, name: keyof typeof schemas = 'Problem') => ({
  description,
  content: { 'application/problem+json': { schema: ref(name) } },
});

const EVERYWHERE = {
  '401': refusal('No token, or one that is no longer good'),
  '403': refusal('The token lacks the scope'),
  '429': refusal('More than 300 requests in a minute; see Retry-After'),
};

const csv = { 'text/csv': { schema: { type: 'string' } } };

const parameter = (name: string, where: 'query' | 'path', schema: Schema, description: string) => ({
  name,
  in: where,
  required: where === 'path',
  schema,
  description,
});

const text = { type: 'string', maxLength: 100 };
const day = { type: 'string', format: 'date' };

/** As the list of jobs is filtered. Everything given must hold. */
const FILTER = [
  parameter(
    'job',
    'query',
    { type: 'string', maxLength: 80 },
    'One job, by its number; nothing else is looked at then',
  ),
  parameter('search', 'query', text, 'Part of the job number or of the sheet’s name'),
  parameter('sheet', 'query', text, 'Name of the sheet'),
  parameter('technician', 'query', text, 'Code of a technician with a setup in the job'),
  parameter('stage', 'query', { enum: [...STAGES] }, 'The last stage reached'),
  parameter('section', 'query', { enum: [...SECTIONS] }, 'With a dimension out of tolerance there'),
  parameter('outcome', 'query', { enum: [...OUTCOMES] }, 'Right first time or not'),
  parameter('from', 'query', day, 'First reading on this day of the shop or later'),
  parameter('to', 'query', day, 'First reading on this day of the shop or before'),
];

function operation(scope: TokenScope, summary: string, rest: Schema): Schema {
  const responses = { ...(rest.responses as Schema), ...EVERYWHERE };
  return { summary, security: [{ token: [scope] }], ...rest, responses };
}

/** The HTTP interface as an OpenAPI 3.1 document, from the schemas that its answers are typed by. */
export function openApi(): Schema {
  return {
    openapi: '3.1.0',
    info: {
      title: 'Rehang',
      version: '1',
      description: `Measurements in, reports out. Every request but this document takes a token (Authorization: Bearer rehang_…), which belongs to one shop. Scopes: ${TOKEN_SCOPES.join(', ')}. A verdict is about a reading: it never says that a structure is sound.`,
    },
    servers: [{ url: '/api/v1' }],
    paths: {
      '/measurements': {
        post: operation('measurements:write', 'Load a measurement file, all or nothing', {
          description: 'The same file twice adds nothing. At most 250 MB.',
          parameters: [
            parameter(
              'dry_run',
              'query',
              { enum: ['true', 'false'] },
              'true: read and judge the file, store nothing',
            ),
            parameter(
              'name',
              'query',
              { type: 'string', maxLength: 200 },
              'What the file is called in lists',
            ),
          ],
          requestBody: { required: true, content: csv },
          responses: {
            '200': inJson('Nothing was added: all of it was there, or it was a dry run', 'TakenFile'),
            '201': inJson('Stored', 'TakenFile'),
            '400': refusal('Not understood, or cut off on the way'),
            '413': refusal('Larger than 250 MB'),
            '415': refusal('Not text/csv'),
            '422': refusal('The file has faults; nothing of it was stored', 'RefusedFile'),
          },
        }),
        get: operation('measurements:read', 'Readings as a measurement file', {
          parameters: FILTER,
          responses: {
            '200': { description: 'A measurement file', content: csv },
            '400': refusal('A filter is not understood'),
          },
        }),
      },
      '/report': {
        get: operation('reports:read', 'The batch report from the figures as they are now', {
          responses: {
            '200': inJson('The batch report', 'BatchReport'),
            '503': refusal('There are no figures yet; see Retry-After'),
          },
        }),
      },
      '/jobs/{job}': {
        get: operation('reports:read', 'A job with its rounds and verdicts', {
          parameters: [parameter('job', 'path', { type: 'string', maxLength: 80 }, 'The job number')],
          responses: { '200': inJson('The job', 'Job'), '404': refusal('The shop has no such job') },
        }),
      },
      '/reports': {
        get: operation('reports:read', 'The reports that were made by themselves, newest first', {
          responses: { '200': inJson('At most 12', 'ScheduledReports') },
        }),
      },
      '/reports/{id}': {
        get: operation('reports:read', 'A report that was made by itself', {
          parameters: [parameter('id', 'path', { type: 'integer' }, 'As /reports lists it')],
          responses: {
            '200': inJson('The batch report', 'BatchReport'),
            '404': refusal('Not kept, or it failed'),
            '503': refusal('It is being made; see Retry-After'),
          },
        }),
      },
    },
    components: {
      schemas,
      securitySchemes: {
        token: { type: 'http', scheme: 'bearer', description: 'rehang_ and 43 characters' },
      },
    },
  };
}
