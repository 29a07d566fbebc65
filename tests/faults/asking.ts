/** What a test asks of a running shop's JSON interface. Never throws for a refused connection: that is an answer here. */
export type Answered = { readonly status: number; readonly body: Record<string, unknown> };

const GONE: Answered = { status: 0, body: {} };

/** @returns status 0 where nobody answered */
export async function post(origin: string, path: string, key: string, body: object): Promise<Answered> {
  return answered(
    fetch(origin + path, {
      method: "POST",
      headers: { "content-type": "application/json", "idempotency-key": `"${key}"` },
      body: JSON.stringify(body),
    }),
  );
}

export const get = (origin: string, path: string): Promise<Answered> => answered(fetch(origin + path));

async function answered(response: Promise<Response>): Promise<Answered> {
  try {
    const { status, ...rest } = await response.then(async (it) => ({ status: it.status, text: await it.text() }));
    return { status, body: JSON.parse(rest.text) as Record<string, unknown> };
  } catch {
    return GONE;
  }
}

const NEVER = { when: "never" };

/** A dull craft whose slip is due. */
export const ANSWERS = {
  unitFamily: "set-nut",
  builtYear: 2026,
  engineHours: 120,
  riding: "easy",
  mods: { engine: false, charger: false },
  lastRebuild: NEVER,
  lastSlipSet: NEVER,
  washers: "metal",
  symptoms: [],
};

export const bookingOf = (hold: unknown, name: string) => ({
  hold,
  answers: ANSWERS,
  contact: { name, email: "owner@lake.example" },
  returnTo: { collect: true },
});

type Offered = { readonly id: string; readonly startsAt: string; readonly bench: string };

export const offersIn = ({ body }: Answered): readonly Offered[] => (body["offers"] ?? []) as readonly Offered[];

/** A day so many days from now, as the interface takes it. */
export const daysAhead = (days: number): string => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);
