/** One table of the models file, as far as copying has to know it. */
export interface Table {
  name: string;
  columns: string[];
  /** The key, its leading column first: rows are read in its order. */
  key: string[];
  /** True where the leading column of the key is text, not a number. */
  named: boolean;
  /** Columns of JSON, which one database keeps as text, and whether one may be without a value. */
  json: Map<string, { optional: boolean }>;
  /** True where the database counts the key itself. */
  counted: boolean;
}

const MODEL = /^model (\w+) \{\n([\s\S]*?)^\}/gm;
const FIELD = /^ {2}(\w+)\s+(\w+)(\[\])?(\??)(.*)$/gm;
const SCALARS = ['Int', 'BigInt', 'Float', 'String', 'Boolean', 'DateTime', 'Json'];
const KEY = /@@id\(\[([^\]]+)\]\)/;

/**
 * The tables of a schema, each after those that it refers to. Read from the schema itself, so that a table that
 * is added there is copied and backed up without anybody having to think of it.
 */
export function tablesOf(schema: string): Table[] {
  const refersTo = new Map<string, Set<string>>();
  const tables = new Map<string, Table>();
  for (const [, name = '', body = ''] of schema.matchAll(MODEL)) {
    const fields = [...body.matchAll(FIELD)].map(([, field = '', type = '', , optional = '', rest = '']) => ({
      field,
      type,
      optional: optional !== '',
      rest,
    }));
    const scalars = fields.filter(({ type }) => SCALARS.includes(type));
    const id = scalars.filter(({ rest }) => /@id\b/.test(rest)).map(({ field }) => field);
    const key = id.length > 0 ? id : (KEY.exec(body)?.[1] ?? '').split(',').map((field) => field.trim());
    tables.set(name, {
      name,
      columns: scalars.map(({ field }) => field),
      key,
      named: scalars.some(({ field, type }) => field === key[0] && type === 'String'),
      json: new Map(
        scalars.filter(({ type }) => type === 'Json').map(({ field, optional }) => [field, { optional }]),
      ),
      counted: scalars.some(({ rest }) => rest.includes('autoincrement()')),
    });
    const parents = fields.filter(({ rest }) => rest.includes('@relation(fields:')).map(({ type }) => type);
    refersTo.set(name, new Set(parents));
  }
  return inOrder(tables, refersTo);
}

function inOrder(
  tables: ReadonlyMap<string, Table>,
  refersTo: ReadonlyMap<string, ReadonlySet<string>>,
): Table[] {
  const ordered: Table[] = [];
  const placed = new Set<string>();
  while (ordered.length < tables.size) {
    const next = [...tables.values()].find(
      ({ name }) =>
        !placed.has(name) &&
        [...(refersTo.get(name) ?? [])].every((parent) => placed.has(parent) || parent === name),
    );
    if (next === undefined) throw new Error('Tables refer to each other in a circle.');
    ordered.push(next);
    placed.add(next.name);
  }
  return ordered;
}
