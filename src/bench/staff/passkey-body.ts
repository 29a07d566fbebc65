import * as z from "zod";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { decodeBase64url } from "#src/http/base64url.ts";

/** No part of an answer comes near it. */
const MOST_CHARACTERS = 8192;
/** A credential's id has up to 1023 bytes (Web Authentication Level 3, 4, "Credential ID"). */
const LONGEST_ID = 1364;

const Bytes = z
  .string()
  .max(MOST_CHARACTERS)
  .refine((text) => decodeBase64url(text) !== null);
const Id = Bytes.min(1).max(LONGEST_ID);
const ClientData = z.object({ challenge: z.string().max(200), crossOrigin: z.boolean().optional() });

/** What a browser answers with a new passkey (RegistrationResponseJSON), as far as it is read. */
const NewPasskeyBody = z.object({
  id: Id,
  rawId: Id,
  type: z.literal("public-key"),
  response: z.object({
    clientDataJSON: Bytes,
    authenticatorData: Bytes,
    publicKey: Bytes,
    publicKeyAlgorithm: z.int(),
    transports: z.array(z.string().max(20)).max(10).default([]),
  }),
});
export type NewPasskeyBody = z.infer<typeof NewPasskeyBody>;

/** What it answers when a passkey signs (AuthenticationResponseJSON). */
const SignedBody = z.object({
  id: Id,
  rawId: Id,
  type: z.literal("public-key"),
  response: z.object({ clientDataJSON: Bytes, authenticatorData: Bytes, signature: Bytes, userHandle: Bytes }),
});
export type SignedBody = z.infer<typeof SignedBody>;

/** An answer with what its client data says; the challenge is not known to be ours yet. */
export type PasskeyAnswer<Body> = { readonly body: Body; readonly client: z.infer<typeof ClientData> };

export const readNewPasskey = (text: string) => readAnswer(NewPasskeyBody, text);
export const readSigned = (text: string) => readAnswer(SignedBody, text);

function readAnswer<Body extends NewPasskeyBody | SignedBody>(
  schema: z.ZodType<Body>,
  text: string,
): Outcome<PasskeyAnswer<Body>, "unreadable"> {
  const body = schema.safeParse(jsonIn(text));
  if (!body.success || body.data.id !== body.data.rawId) return refuse("unreadable");
  const bytes = decodeBase64url(body.data.response.clientDataJSON);
  const client = ClientData.safeParse(bytes === null ? null : jsonIn(new TextDecoder().decode(bytes)));
  return client.success ? accept({ body: body.data, client: client.data }) : refuse("unreadable");
}

function jsonIn(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
