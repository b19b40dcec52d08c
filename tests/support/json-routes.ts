/** As much of an OpenAPI description as making bodies from it takes. */
interface Schema {
  $ref?: string;
  description?: string;
  type?: string | readonly string[];
  enum?: readonly unknown[];
  example?: unknown;
  default?: unknown;
  minimum?: number;
  required?: readonly string[];
  properties?: Readonly<Record<string, Schema>>;
  items?: Schema;
  oneOf?: readonly Schema[];
  anyOf?: readonly Schema[];
  allOf?: readonly Schema[];
}

export interface OpenApi {
  openapi: string;
  paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  components: { schemas: Readonly<Record<string, Schema>> };
}

interface Operation {
  summary?: string;
  description?: string;
  requestBody?: { content: Readonly<Record<string, { schema: Schema }>> };
}

export interface JsonRoute {
  method: string;
  path: string;
  schema: Schema;
  schemas: OpenApi['components']['schemas'];
  /** It keeps nothing: its answer is all it does. */
  isCalculation: boolean;
}

const CALCULATION = /\/(coolant|fitment|warm-up)\/|vin-check|invoices\/totals/;

/** Every call that takes a JSON body. */
export function jsonRoutes({ paths, components }: OpenApi): JsonRoute[] {
  return Object.entries(paths).flatMap(([path, operations]) =>
    Object.entries(operations).flatMap(([method, { requestBody }]) => {
      const schema = requestBody?.content['application/json']?.schema;
      // Wrong sign-ins would shut the door on the rest.
      if (!schema || path.endsWith('/session')) return [];
      return [{ method: method.toUpperCase(), path, schema, schemas: components.schemas, isCalculation: CALCULATION.test(path) }];
    }),
  );
}

/** A body with every property that the description names. */
export function exampleOf({ schema, schemas }: JsonRoute): unknown {
  return example(schema, { schemas, depth: 0 });
}

function example(schema: Schema, { schemas, depth }: { schemas: JsonRoute['schemas']; depth: number }): unknown {
  const inner = (next: Schema): unknown => example(next, { schemas, depth: depth + 1 });
  if (depth > 8) return null;
  if (schema.$ref !== undefined) return inner(schemas[schema.$ref.replace('#/components/schemas/', '')] ?? {});
  if (schema.example !== undefined) return schema.example;
  if (schema.enum?.[0] !== undefined) return schema.enum[0];
  const choice = schema.oneOf?.[0] ?? schema.anyOf?.[0];
  if (choice) return inner(choice);
  if (schema.allOf?.[0]) return Object.assign({}, ...schema.allOf.map(inner)) as unknown;
  if (schema.properties) return Object.fromEntries(Object.entries(schema.properties).map(([name, property]) => [name, inner(property)]));
  const type = typeof schema.type === 'string' ? schema.type : schema.type?.[0];
  if (type === 'array') return schema.items ? [inner(schema.items)] : [];
  if (type === 'number' || type === 'integer') return schema.default ?? Math.max(schema.minimum ?? 1, 1);
  if (type === 'boolean') return true;
  return type === 'object' ? (schema.default ?? {}) : (schema.default ?? '1');
}

/** Ways to every place in a body: each property, each member of a list. */
export function leavesOf(body: unknown, way: readonly string[] = []): string[][] {
  if (typeof body !== 'object' || body === null) return [];
  return Object.entries(body).flatMap(([name, value]) => [[...way, name], ...leavesOf(value, [...way, name])]);
}

/** The same body with another value in one place. */
export function withLeaf(body: unknown, [name, ...rest]: readonly string[], value: unknown): unknown {
  if (name === undefined) return value;
  if (Array.isArray(body)) return body.map((inner, index) => (String(index) === name ? withLeaf(inner, rest, value) : (inner as unknown)));
  const object = body as Record<string, unknown>;
  return { ...object, [name]: withLeaf(object[name], rest, value) };
}
