import { expect, it } from "vitest";
import { unstable_readConfig } from "wrangler";
import * as z from "zod";
import {
  COMPATIBILITY_DATE,
  LEDGER_CLASS,
  REQUEST_LIMIT,
  WORKER_NAME,
  workerOptions,
} from "#src/local/worker-options.ts";

const Named = z.array(z.object({ name: z.string() }));
const Edge = z.looseObject({
  durable_objects: z.object({ bindings: Named }),
  kv_namespaces: z.array(z.object({ binding: z.string() })),
  r2_buckets: z.array(z.object({ binding: z.string() })),
  ratelimits: Named,
  vars: z.record(z.string(), z.string()),
  secrets: z.object({ required: z.array(z.string()) }),
});

const config = unstable_readConfig({ config: "wrangler.toml" });
const edge = Edge.parse(config);
const vars = { LINK_KEY: "key", PUBLIC_ORIGIN: "", OPEN_HOLDS_PER_SOURCE: "" };
const local = workerOptions({ script: "", port: 1, stateFolder: "/nowhere", requestsPerMinute: 300, vars });

it("gives the worker on one machine what it has on the edge", () => {
  expect(config).toMatchObject({
    name: WORKER_NAME,
    compatibility_date: COMPATIBILITY_DATE,
    compatibility_flags: [],
    durable_objects: { bindings: [{ name: "SHOP", class_name: LEDGER_CLASS }] },
    migrations: [{ new_sqlite_classes: [LEDGER_CLASS] }],
    ratelimits: [{ name: "REQUEST_LIMIT", simple: REQUEST_LIMIT }],
  });
  const onTheEdge = [
    ...edge.durable_objects.bindings.map(({ name }) => name),
    ...edge.kv_namespaces.map(({ binding }) => binding),
    ...edge.r2_buckets.map(({ binding }) => binding),
    ...edge.ratelimits.map(({ name }) => name),
    ...Object.keys(edge.vars),
    ...edge.secrets.required,
  ];
  expect(Object.keys(local.workers[0]?.config.env ?? {}).sort()).toEqual(onTheEdge.sort());
});

it("listens on the loopback address only, and asks nobody about itself", () => {
  expect(local).toMatchObject({
    host: "127.0.0.1",
    cf: false,
    telemetry: { enabled: false },
    enableDevRegistry: false,
  });
});
