/** The description of the folder: a Data Package with a Table Schema for each table (Frictionless Data, version 1). */
import { isoMoment } from '../calendar/ask.ts';
import type { Moment } from '../journal/moment.ts';
import type { Reference, Table } from './table.ts';

/** Version of the shape; it grows when a column changes its meaning or goes, not when one comes. */
const TABLES_SHAPE = 1;

export interface Packing {
  readonly now: Moment;
  /** The version of the program. */
  readonly plumule: string;
  /** Whether the tables are there as Parquet too. */
  readonly parquet: boolean;
}

/** For `datapackage.json`, beside files named after the tables. */
export function dataPackageOf(tables: readonly Table[], { now, plumule, parquet }: Packing): object {
  return {
    profile: 'data-package',
    name: 'plumule-tables',
    title: 'Tables of a journal of sown seed',
    description: 'Empty cells and null mean unknown. Days and times are those of the journal. In CSV, an apostrophe in front of a text keeps a spreadsheet from running it: take one away.',
    version: String(TABLES_SHAPE),
    plumule,
    now: isoMoment(now),
    resources: tables.flatMap(table => [
      csvResource(table),
      otherResource(table, { end: 'jsonl', mediatype: 'application/jsonl' }),
      ...(parquet ? [otherResource(table, { end: 'parquet', mediatype: 'application/vnd.apache.parquet' })] : []),
    ]),
  };
}

/** A name of a resource has no sign but hyphens. */
function resourceName(table: string): string {
  return table.replaceAll('_', '-');
}

function csvResource({ name, says, key, fields, references }: Table): object {
  return {
    profile: 'tabular-data-resource',
    name: resourceName(name),
    description: says,
    path: `${name}.csv`,
    format: 'csv', mediatype: 'text/csv', encoding: 'utf-8',
    dialect: { delimiter: ',', lineTerminator: '\n', quoteChar: '"', doubleQuote: true, header: true, caseSensitiveHeader: true },
    schema: {
      fields: fields.map(({ name: field, type, says: description, words }) => {
        const constraints = { ...(key.includes(field) && { required: true }), ...(words && { enum: words }) };
        return { name: field, type, description, ...(Object.keys(constraints).length > 0 && { constraints }) };
      }),
      missingValues: [''],
      primaryKey: key,
      ...(references.length > 0 && { foreignKeys: references.map(foreignKey) }),
    },
  };
}

function foreignKey({ columns, table }: Reference): object {
  return { fields: columns, reference: { resource: resourceName(table), fields: columns } };
}

function otherResource({ name, says }: Table, { end, mediatype }: { end: string; mediatype: string }): object {
  return {
    profile: 'data-resource',
    name: `${resourceName(name)}-${end}`,
    description: says,
    path: `${name}.${end}`,
    format: end, mediatype, ...(end === 'jsonl' && { encoding: 'utf-8', jsonSchema: `${name}.schema.json` }),
  };
}
