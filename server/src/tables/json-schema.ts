import type { CellType, Field, Table } from './table.ts';

interface Value {
  readonly type: string;
  readonly format?: string;
  readonly pattern?: string;
}

const types: Readonly<Record<CellType, Value>> = {
  string: { type: 'string' },
  integer: { type: 'integer' },
  number: { type: 'number' },
  boolean: { type: 'boolean' },
  date: { type: 'string', format: 'date', pattern: '^\\d{4}-\\d{2}-\\d{2}$' },
  // The format "time" of JSON Schema asks for a zone, and the clock of a journal need not have one.
  time: { type: 'string', pattern: '^\\d{2}:\\d{2}:00$' },
};

/** The JSON Schema (2020-12) of one line of a table as JSON Lines. */
export function jsonSchemaOf({ name, says, key, fields }: Table): object {
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: name,
    description: says,
    type: 'object',
    properties: Object.fromEntries(fields.map(field => [field.name, propertyOf(field, key.includes(field.name))])),
    required: fields.map(field => field.name),
    additionalProperties: false,
  };
}

function propertyOf({ type, says, words }: Field, isNeeded: boolean): object {
  const value = types[type];
  if (isNeeded) return { description: says, ...value, ...(words && { enum: words }) };
  return { description: says, ...value, type: [value.type, 'null'], ...(words && { enum: [...words, null] }) };
}
