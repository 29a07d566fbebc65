import { Validator } from "@seriousme/openapi-schema-validator";
import { expect, it } from "vitest";
import type { ApiNeeds } from "#src/api/api-needs.ts";
import { apiRoutes } from "#src/api/api-routes.ts";
import { openapiDocument } from "#src/api/openapi.ts";

const document = JSON.parse(JSON.stringify(openapiDocument()));

it("is a valid OpenAPI 3.1 document", async () => {
  const { valid, errors } = await new Validator().validate(structuredClone(document));
  expect(errors).toBeUndefined();
  expect(valid).toBe(true);
});

it("describes every route of the interface and no other", () => {
  const routes = apiRoutes({} as ApiNeeds).routes.map(
    ({ method, path }) => `${method} /api${path.replace(/:(\w+)/g, "{$1}")}`,
  );
  const described = Object.entries<object>(document.paths).flatMap(([path, operations]) =>
    Object.keys(operations).map((method) => `${method.toUpperCase()} ${path}`),
  );
  expect(described.sort()).toEqual(routes.filter((route) => !route.endsWith("/openapi.json")).sort());
});

it("defines every schema that it refers to, and refers to every one that it defines", () => {
  const referred = [...JSON.stringify(document).matchAll(/"#\/components\/schemas\/(\w+)"/g)].map(([, name]) => name);
  expect([...new Set(referred)].sort()).toEqual(Object.keys(document.components.schemas).sort());
});

it("is made from the schemas that the routes check with", () => {
  const { TriageRequest, RememberedService } = document.components.schemas;
  expect(TriageRequest.additionalProperties).toBe(false);
  expect(TriageRequest.properties.unitFamily.enum).toEqual(["shim-stack", "set-nut", "unknown"]);
  expect(TriageRequest.properties.lastRebuild).toEqual({ $ref: "#/components/schemas/RememberedService" });
  expect(RememberedService.required).toEqual(["when"]);
});
