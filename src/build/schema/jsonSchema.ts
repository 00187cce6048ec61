import { z } from 'zod';
import { brief } from './brief.ts';
import { build } from './build.ts';
import { shelfFile } from './shelfFile.ts';

type Json = z.core.JSONSchema.BaseSchema;

/** The published schemas by file name: what editors complete and check files with. */
export function jsonSchemas(): Readonly<Record<string, object>> {
  return {
    'build.schema.json': published('A Quadwright build', build),
    'brief.schema.json': published('A Quadwright brief', brief),
    'shelf.schema.json': published('A Quadwright shelf of parts', shelfFile),
  };
}

function published(title: string, schema: z.ZodType): object {
  const made = z.toJSONSchema(schema, {
    io: 'input',
    target: 'draft-2020-12',
    override: ({ zodSchema, jsonSchema }) => asWritten(zodSchema, jsonSchema),
  });
  return { ...made, title };
}

/** Our transforms are opaque to zod: this says what a file writes for them. */
function asWritten(zodSchema: z.core.$ZodType, jsonSchema: Json): void {
  const shape = jsonSchema.shape;
  delete jsonSchema.shape;
  const type = zodSchema._zod.def.type;
  // A default is in SI or already read; in the file's own words it stands in the description.
  if (
    type === 'default' &&
    typeof jsonSchema.default !== 'string' &&
    typeof jsonSchema.default !== 'boolean'
  ) {
    delete jsonSchema.default;
  }
  switch (shape) {
    case 'plain quantity':
    case 'text':
      jsonSchema.type = 'string';
      return;
    case 'text or number':
      jsonSchema.anyOf = [{ type: 'string' }, { type: 'number' }];
      return;
    case 'quantity':
      jsonSchema.anyOf = [{ type: 'string' }, TRUSTED];
      return;
    case 'seat': {
      const { description, ...whole } = jsonSchema;
      for (const key of Object.keys(jsonSchema)) delete jsonSchema[key];
      Object.assign(jsonSchema, { anyOf: [{ type: 'string', description: 'The id of the part' }, whole] });
      if (description !== undefined) jsonSchema.description = description;
      return;
    }
    default:
  }
}

const TRUSTED: Json = {
  type: 'object',
  properties: {
    value: { type: 'string', description: 'The number with its unit' },
    spread: { type: 'string', description: 'One standard deviation, such as "2 %" or "0.5 g"' },
    trust: { type: 'string', enum: ['measured', 'maker', 'inferred'] },
    source: { type: 'string', maxLength: 200 },
  },
  required: ['value'],
  additionalProperties: false,
};
