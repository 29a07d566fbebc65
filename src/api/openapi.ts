import { OPERATIONS, type Operation } from "#src/api/openapi-operations.ts";
import { componentSchemas, querySchemas } from "#src/api/openapi-schemas.ts";
import { VERSION } from "#src/http/health.ts";
import { STATUS_PHRASES } from "#src/http/problem.ts";

/** The interface as an OpenAPI 3.1 document; its schemas are those that the routes check with. */
export function openapiDocument() {
  const paths: Record<string, Record<string, unknown>> = {};
  for (const operation of OPERATIONS) {
    paths[operation.path] = { ...paths[operation.path], [operation.method]: operationObject(operation) };
  }
  return {
    openapi: "3.1.1",
    info: { title: "Slipbench", version: VERSION, description: DESCRIPTION },
    paths,
    components: {
      schemas: componentSchemas(),
      securitySchemes: {
        ownerToken: { type: "http", scheme: "bearer", description: "The `ownerToken` of the booking" },
      },
    },
  };
}

const DESCRIPTION =
  "Triage, bench time and slip setting for a workshop that services supercharger clutches by mail. " +
  "Errors are problem details (RFC 9457). Fields that are not described are refused. Bodies hold 64 KiB at most. " +
  "A hold that is repeated from the same address and a booking that is repeated for the same hold from anywhere, each " +
  "with its Idempotency-Key within 24 hours, get their first answer again; one that was refused is tried " +
  "anew. A move and a cancellation need no key: asked for again they change nothing and get the same answer, and a key " +
  "that is sent all the same is not used.";

function operationObject({ id, summary, takes, gives: [status, schema], refuses, needs, ...rest }: Operation) {
  return {
    operationId: id,
    summary,
    ...parameters(rest, needs),
    ...(takes === undefined ? {} : { requestBody: { required: true, content: content("application/json", takes) } }),
    ...(needs === "owner-token" ? { security: [{ ownerToken: [] }] } : {}),
    responses: {
      [status]: { description: status === 201 ? "Created" : "OK", content: content("application/json", schema) },
      ...Object.fromEntries([...refuses, ...EVERYWHERE].map((code) => [code, refusal(code)])),
    },
  };
}

/** Refusals that any operation may give. */
const EVERYWHERE = [403, 429, 500] as const;

const refusal = (code: keyof typeof STATUS_PHRASES) => ({
  description: STATUS_PHRASES[code],
  content: content("application/problem+json", "Problem"),
});

const content = (type: string, schema: string) => ({ [type]: { schema: { $ref: `#/components/schemas/${schema}` } } });

function parameters({ path, query = [] }: Pick<Operation, "path" | "query">, needs: Operation["needs"]) {
  const schemas = querySchemas();
  const all = [
    ...(path.endsWith("/{id}") ? [{ name: "id", in: "path", required: true, schema: { type: "string" } }] : []),
    ...query.map((name) => ({ name, in: "query", required: name === "verdict", schema: schemas[name] })),
    ...(needs === "idempotency-key" ? [IDEMPOTENCY_KEY] : []),
  ];
  return all.length === 0 ? {} : { parameters: all };
}

const IDEMPOTENCY_KEY = {
  name: "Idempotency-Key",
  in: "header",
  required: true,
  description: "1 to 200 visible characters, new for each wish; the same again where the same request is repeated.",
  schema: { type: "string", minLength: 1, maxLength: 202 },
};
