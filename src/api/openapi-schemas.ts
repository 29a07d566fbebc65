import * as z from "zod";
import { ModsSchema, RememberedServiceSchema } from "#shared/craft/answers-schema.ts";
import { AddressSchema, ContactSchema } from "#shared/shop/people.ts";
import { SlipReadingSchema } from "#shared/slip/slip-reading-schema.ts";
import { JudgedAnswers, WishAnswers } from "#src/api/answers-body.ts";
import { BookingAnswer, BookingRequest, ChangeAnswer, MoveRequest } from "#src/api/booking-bodies.ts";
import { HoldAnswer, HoldRequest } from "#src/api/hold-bodies.ts";
import { ProblemAnswer } from "#src/api/problem-body.ts";
import { ReceiptAnswer } from "#src/api/receipt-body.ts";
import { OfferAnswer, SlotAnswer, SlotsAnswer, SlotsQuery } from "#src/api/slot-bodies.ts";
import { SlipPlanAnswer, SlipPlanRequest, SlipReadingAnswer, TriageAnswer } from "#src/api/triage-bodies.ts";

/** What comes in, by the name it has in the document. Parts that are used more than once have names too. */
export const TAKEN = {
  TriageRequest: JudgedAnswers,
  SlipPlanRequest,
  SlipReadingRequest: SlipReadingSchema,
  HoldRequest,
  BookingRequest,
  MoveRequest,
  Answers: WishAnswers,
  Mods: ModsSchema,
  RememberedService: RememberedServiceSchema,
  Contact: ContactSchema,
  Address: AddressSchema,
} as const;

/** What goes out. */
export const GIVEN = {
  TriageAnswer,
  SlipPlanAnswer,
  SlipReadingAnswer,
  SlotsAnswer,
  HoldAnswer,
  BookingAnswer,
  ReceiptAnswer,
  ChangeAnswer,
  Offer: OfferAnswer,
  Slot: SlotAnswer,
  Problem: ProblemAnswer,
} as const;

type SchemaJson = Readonly<Record<string, unknown>>;

/** All of them as JSON Schema (draft 2020-12), made from the schemas that the routes themselves use. */
export const componentSchemas = (): Readonly<Record<string, SchemaJson>> => ({
  ...jsonSchemas(TAKEN, "input"),
  ...jsonSchemas(GIVEN, "output"),
});

/** The fields of a query, each as JSON Schema. */
export const querySchemas = (): Readonly<Record<string, SchemaJson>> =>
  (z.toJSONSchema(SlotsQuery, { io: "input" }).properties ?? {}) as Record<string, SchemaJson>;

function jsonSchemas(named: Readonly<Record<string, z.ZodType>>, io: "input" | "output") {
  const registry = z.registry<{ id: string }>();
  for (const [id, schema] of Object.entries(named)) registry.add(schema, { id });
  const { schemas } = z.toJSONSchema(registry, { io, uri: (id) => `#/components/schemas/${id}` });
  // Within an OpenAPI document its own version and place count.
  return Object.fromEntries(
    Object.entries(schemas).map(([id, { $schema: _, $id: __, ...schema }]) => [id, schema as SchemaJson]),
  );
}
