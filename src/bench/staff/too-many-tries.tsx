import type { Context } from "hono";
import { tooManyTries } from "#shared/messages/shop-sign-in-words.ts";
import type { TooManyTries } from "#shared/shop/staff-wishes.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { LinkProblemPage } from "#src/bench/sign-in-pages.tsx";
import { problem } from "#src/http/problem.ts";

type WaitNeeds = Pick<BenchNeeds, "shop" | "now">;

/** Says to a person how long to wait. */
export async function tooManyTriesAnswer(c: Context, needs: WaitNeeds, { until }: TooManyTries): Promise<Response> {
  const { front } = (await needs.shop.settings()).settings;
  c.header("retry-after", String(secondsLeft(needs, until)));
  return c.html(<LinkProblemPage front={front} problem={textOf(needs, until)} />, 429);
}

/** Says the same to a script. */
export const tooManyTriesProblem = (needs: WaitNeeds, { until }: TooManyTries): Response =>
  problem({
    status: 429,
    detail: textOf(needs, until),
    headers: { "retry-after": String(secondsLeft(needs, until)) },
  });

const secondsLeft = ({ now }: WaitNeeds, until: number): number => Math.max(1, Math.ceil((until - now()) / 1000));
const textOf = (needs: WaitNeeds, until: number): string => tooManyTries(Math.ceil(secondsLeft(needs, until) / 60));
