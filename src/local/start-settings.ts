import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import { REQUEST_LIMIT } from "#src/local/worker-options.ts";

const DEFAULT_PORT = 8787;
const HIGHEST_PORT = 65_535;

/** What the environment may say about a start; everything has a default. */
export type StartSettings = {
  readonly port: number;
  readonly demo: boolean;
  readonly publicOrigin: string;
  readonly requestsPerMinute: number;
  readonly openHoldsPerSource: string;
};

type Environment = Readonly<Record<string, string | undefined>>;

/** A refusal is the sentence to show. */
export function startSettings(env: Environment): Outcome<StartSettings, string> {
  const port = wholeNumber(env["PORT"], DEFAULT_PORT);
  if (port === null || port > HIGHEST_PORT)
    return refuse("PORT must be a whole number from 0 (any free one) to 65535.");
  const requestsPerMinute = wholeNumber(env["REQUESTS_PER_MINUTE"], REQUEST_LIMIT.limit);
  if (!requestsPerMinute) return refuse("REQUESTS_PER_MINUTE must be a whole number above 0.");
  const openHolds = wholeNumber(env["OPEN_HOLDS_PER_SOURCE"], 0);
  if (openHolds === null) return refuse("OPEN_HOLDS_PER_SOURCE must be a whole number.");
  const publicOrigin = env["PUBLIC_ORIGIN"] ?? "";
  if (publicOrigin !== "" && !/^https?:\/\/[^/]/i.test(publicOrigin))
    return refuse('PUBLIC_ORIGIN must be an address such as "https://service.shop.example".');
  const demo = env["DEMO"] || "yes";
  if (demo !== "yes" && demo !== "no") return refuse('DEMO must be "yes" or "no".');
  return accept({
    port,
    demo: demo === "yes",
    publicOrigin,
    requestsPerMinute,
    openHoldsPerSource: openHolds === 0 ? "" : String(openHolds),
  });
}

function wholeNumber(text: string | undefined, otherwise: number): number | null {
  if (!text) return otherwise;
  return /^\d{1,9}$/.test(text) ? Number(text) : null;
}
