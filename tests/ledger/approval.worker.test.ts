import { runDurableObjectAlarm, runInDurableObject } from "cloudflare:test";
import { describe, expect, it, vi } from "vitest";
import type { ApprovalState } from "#shared/job/approval.ts";
import { ANSWERS, type ApprovalAnswer } from "#shared/job/approval-wish.ts";
import { serialOf } from "#shared/shop/job-number.ts";
import {
  aBooking,
  aLedger,
  changeSettings,
  countRows,
  DAY,
  type LedgerStub,
  MINUTE,
  setClock,
  takenQuanta,
} from "#tests/ledger/a-ledger.ts";
import { AFTER_UNTIL, anAskWish, askedOwner, FRIDAY, onBench } from "#tests/ledger/an-approval.ts";

type Asked = Awaited<ReturnType<typeof askedOwner>>;

const answerOf = (ledger: LedgerStub, { linkHash, approval }: Asked, answer: ApprovalAnswer) =>
  ledger.answerApproval({ linkHash, approval, answer });
const approvalNow = async (ledger: LedgerStub, { linkHash }: Pick<Asked, "linkHash">) =>
  (await ledger.approvalsByLink(linkHash))[0]!;
const eventsOf = async (ledger: LedgerStub, number: string) =>
  (await ledger.job(number))!.history.map(({ who, what }) => `${who} ${what}`);
const slotOf = async (ledger: LedgerStub, number: string) => (await ledger.job(number))!.booking.time;
const nine = Date.UTC(2040, 4, 11, 13);

describe("asking", () => {
  it("makes the job wait, and shows the owner what, why, how much and until when", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    expect((await ledger.job(asked.number))?.state).toBe("owner-to-decide");
    expect(await approvalNow(ledger, asked)).toMatchObject({
      id: asked.approval,
      state: "open",
      askedAt: FRIDAY,
      askedBy: "Wilma Bench",
      why: "The friction washers are worn through.",
      photo: null,
      until: Date.UTC(2040, 4, 17, 3, 59),
      closed: null,
      words: [],
      offered: {
        work: "full-rebuild",
        benchMinutes: 240,
        quote: { work: "full-rebuild", minor: 42_500, currency: "USD", from: false, usualDays: 5 },
      },
      told: { opened: false, engineDebris: "unlikely" },
    });
  });

  it("asks once, however often it is sent", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    expect(await ledger.askOwner(asked.wish)).toMatchObject({ ok: true, value: { approval: { id: asked.approval } } });
    expect(await ledger.approvalsByLink(asked.linkHash)).toHaveLength(1);
    expect(await ledger.askOwner(anAskWish(asked.number))).toEqual({
      ok: false,
      refusal: { reason: "not-on-bench", state: "owner-to-decide" },
    });
  });

  it.each([
    [{ currency: "EUR" }, { reason: "currency-changed" }],
    [{ photo: "nobody's" }, { reason: "no-such-photo" }],
    [{ untilDate: "2040-05-10" }, { reason: "not-a-day" }],
    [{ untilDate: "2040-08-10" }, { reason: "not-a-day" }],
    [{ goAhead: true, priceMinor: 60_001 }, { reason: "over-go-ahead" }],
    [{ anyPrice: false, priceMinor: 39_900 }, { reason: "not-the-list-price" }],
    [{ number: "0000" }, { reason: "no-such-job" }],
  ] as const)("refuses %j", async (change, refusal) => {
    const ledger = await aLedger();
    const { number } = await onBench(ledger);
    expect(await ledger.askOwner(anAskWish(number, change))).toEqual({ ok: false, refusal });
    expect((await ledger.job(number))?.state).toBe("on-bench");
  });

  it("shows a photo of this job only, and none that was removed", async () => {
    const ledger = await aLedger();
    const { number } = await onBench(ledger);
    const other = await aBooking(ledger);
    await runInDurableObject(ledger, (_, { storage: { sql } }) => {
      for (const [id, of, removed] of [
        ["mine", number, null],
        ["gone", number, FRIDAY],
        ["theirs", other.number, null],
      ] as const) {
        sql.exec(
          `INSERT INTO photo (id, key, job, step, part, type, bytes, sha256, at, staff, removed_at)
           VALUES (?1, ?1, ?2, 'inspect', NULL, 'image/jpeg', 1, 'x', 0, 'Wilma', ?3)`,
          id,
          serialOf(of),
          removed,
        );
      }
    });
    for (const photo of ["gone", "theirs"]) {
      expect(await ledger.askOwner(anAskWish(number, { photo }))).toMatchObject({
        refusal: { reason: "no-such-photo" },
      });
    }
    expect(await ledger.askOwner(anAskWish(number, { photo: "mine" }))).toMatchObject({ ok: true });
  });
});

describe("each state and each answer", () => {
  const CLOSING: Readonly<Record<ApprovalState, (ledger: LedgerStub, asked: Asked) => Promise<unknown>>> = {
    open: async () => undefined,
    approved: (ledger, asked) => answerOf(ledger, asked, "approve"),
    declined: (ledger, asked) => answerOf(ledger, asked, "decline"),
    withdrawn: (ledger, { number, approval }) => ledger.withdrawApproval({ number, approval, staff: "Otto" }),
    expired: (ledger) => setClock(ledger, AFTER_UNTIL),
  };
  const EXPECTED: Readonly<Record<ApprovalState, Readonly<Record<ApprovalAnswer, ApprovalState | "refused">>>> = {
    open: { approve: "approved", decline: "declined" },
    approved: { approve: "approved", decline: "refused" },
    declined: { approve: "refused", decline: "declined" },
    withdrawn: { approve: "refused", decline: "refused" },
    expired: { approve: "refused", decline: "refused" },
  };
  const cases = (Object.keys(CLOSING) as ApprovalState[]).flatMap((state) =>
    ANSWERS.map((answer) => [state, answer, EXPECTED[state][answer]] as const),
  );

  it.each(cases)("%s, then %s: %s", async (state, answer, expected) => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    await CLOSING[state](ledger, asked);
    const before = await ledger.job(asked.number);
    const given = await answerOf(ledger, asked, answer);
    const after = await ledger.job(asked.number);
    if (expected === "refused") {
      expect(given).toEqual({ ok: false, refusal: { reason: "closed", state } });
      expect(after).toMatchObject({ state: "on-bench", agreed: before!.agreed });
      // What the owner said is kept, once, and changes nothing.
      await answerOf(ledger, asked, answer);
      expect((await approvalNow(ledger, asked)).words).toMatchObject([{ who: "owner" }]);
    } else {
      expect(given).toMatchObject({ ok: true, value: { approval: { state: expected } } });
      expect(after?.state).toBe("on-bench");
      expect(after?.agreed?.work ?? null).toBe(expected === "approved" ? "full-rebuild" : null);
    }
  });

  it("counts the last minute of its time", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    await setClock(ledger, Date.UTC(2040, 4, 17, 3, 59));
    expect(await answerOf(ledger, asked, "approve")).toMatchObject({ ok: true });
  });
});

describe("a yes", () => {
  it("upgrades work, price, minutes and parts, and keeps what the owner was told before", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger, { priceMinor: 39_900 });
    const before = await ledger.job(asked.number);
    await answerOf(ledger, asked, "approve");
    const job = await ledger.job(asked.number);
    expect(job?.plan).toEqual(before?.plan);
    expect(job?.agreed).toMatchObject({
      work: "full-rebuild",
      benchMinutes: 240,
      quote: { minor: 39_900, from: false },
    });
    expect(job?.agreed?.parts.map(({ part }) => part)).toContain("ball-bearings");
    expect(await eventsOf(ledger, asked.number)).toEqual([
      "owner booked",
      "shop receive",
      "shop start",
      "shop ask-owner",
      "owner owner-approved",
      "owner owner-answered",
      "owner work-upgraded",
    ]);
  });

  it("makes the bench time longer where it is, if there is room", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    expect(await slotOf(ledger, asked.number)).toMatchObject({ endsAt: nine });
    await answerOf(ledger, asked, "approve");
    expect(await slotOf(ledger, asked.number)).toMatchObject({
      bench: "b1",
      startsAt: FRIDAY - 30 * MINUTE,
      endsAt: FRIDAY - 30 * MINUTE + 240 * MINUTE,
    });
    expect((await takenQuanta(ledger)).filter(({ bench }) => bench === "b1")).toHaveLength(16);
    expect(await ledger.receipt(asked.booking)).toMatchObject({ version: 1, endsAt: nine + 180 * MINUTE });
  });

  it("takes the soonest time that holds all of it, where somebody else comes next", async () => {
    const ledger = await aLedger();
    const booked = await aBooking(ledger);
    // Both benches are taken from nine to ten: the next to come on each.
    const offers = await ledger.offers({ verdict: "slip-check" });
    expect(offers.length).toBeGreaterThan(0);
    const others = [];
    for (const offer of ["b1", "b2"].map((bench) => `${bench}.${(nine / (15 * MINUTE)).toString(36)}`)) {
      others.push(await aBooking(ledger, { offer }));
    }
    await setClock(ledger, FRIDAY);
    for (const [move, ifState] of [
      ["receive", "booked"],
      ["start", "received"],
    ] as const) {
      await ledger.moveJob({ number: booked.number, move, staff: "Wilma", note: null, ifState });
    }
    const wish = anAskWish(booked.number);
    await ledger.askOwner(wish);
    const answer = await ledger.answerApproval({ linkHash: booked.linkHash, approval: wish.id, answer: "approve" });
    expect(answer).toMatchObject({ ok: true, value: { job: { state: "on-bench", needsBenchTime: false } } });
    expect(await slotOf(ledger, booked.number)).toMatchObject({ bench: "b1", startsAt: nine + 60 * MINUTE });
    expect(await eventsOf(ledger, booked.number)).toContain("shop moved");
    for (const { number } of others) expect(await slotOf(ledger, number)).toMatchObject({ startsAt: nine });
    // An hour each for the others, four for this one, and nothing is kept of the time that it gave up.
    expect(await takenQuanta(ledger)).toHaveLength(4 + 4 + 16);
  });

  it("stands where no bench time is free: the job keeps what it has and says that it needs some", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    await changeSettings(ledger, (settings) => ({
      ...settings,
      calendar: { ...settings.calendar, closures: [{ from: "2040-05-11", to: "2041-12-31", why: "Flood" }] },
    }));
    const before = await takenQuanta(ledger);
    expect(await answerOf(ledger, asked, "approve")).toMatchObject({
      ok: true,
      value: { job: { state: "on-bench", needsBenchTime: true, agreed: { work: "full-rebuild" } } },
    });
    expect(await takenQuanta(ledger)).toEqual(before);
    await changeSettings(ledger, (settings) => ({ ...settings, calendar: { ...settings.calendar, closures: [] } }));
    const offer = `b2.${((nine + 60 * MINUTE) / (15 * MINUTE)).toString(36)}`;
    const moved = await ledger.moveBooking({ booking: asked.booking, linkHash: "", by: "shop", offer });
    expect(moved).toMatchObject({ ok: true, value: { needsBenchTime: false } });
    // The whole of the approved work, not only an hour.
    expect(await slotOf(ledger, asked.number)).toMatchObject({ bench: "b2", endsAt: nine + 300 * MINUTE });
  });

  it("is at the price that was shown, whatever the shop's prices are by then", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    const shown = await approvalNow(ledger, asked);
    await changeSettings(ledger, (settings) => ({
      ...settings,
      calendar: { ...settings.calendar, minutes: { ...settings.calendar.minutes, "full-rebuild": 480 } },
      prices: {
        ...settings.prices,
        currency: "EUR",
        byJob: { ...settings.prices.byJob, "full-rebuild": { "shim-stack": 1, "set-nut": 1, unknown: 1 } },
      },
    }));
    expect(await approvalNow(ledger, asked)).toEqual(shown);
    await answerOf(ledger, asked, "approve");
    expect((await ledger.job(asked.number))?.agreed).toEqual(shown.offered);
  });

  it("is written whole or not at all", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    const before = { job: await ledger.job(asked.number), taken: await takenQuanta(ledger) };
    const onMove = (sql: string) => runInDurableObject(ledger, (_, { storage }) => void storage.sql.exec(sql));
    await onMove("CREATE TRIGGER broken BEFORE UPDATE ON booking BEGIN SELECT raise(ABORT, 'A disk fault'); END");
    // Asked inside of the object, so that the failure is the test's own and not a crash of the object.
    const fault = await runInDurableObject(ledger, (it) => {
      try {
        it.answerApproval({ linkHash: asked.linkHash, approval: asked.approval, answer: "approve" });
        return null;
      } catch (error) {
        return String(error);
      }
    });
    expect(fault).toContain("A disk fault");
    expect({ job: await ledger.job(asked.number), taken: await takenQuanta(ledger) }).toEqual(before);
    expect((await approvalNow(ledger, asked)).state).toBe("open");
    await onMove("DROP TRIGGER broken");
    expect(await answerOf(ledger, asked, "approve")).toMatchObject({ ok: true });
  });
});

describe("a no", () => {
  it("puts the job back on the bench as first agreed; the shop may return it unrepaired", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    await answerOf(ledger, asked, "decline");
    const job = await ledger.job(asked.number);
    expect(job).toMatchObject({ state: "on-bench", agreed: null, needsBenchTime: false });
    expect(job?.history.at(-1)?.note).toContain("as first agreed");
    const wish = { number: asked.number, move: "return", staff: "Wilma", note: "Owner wants it back" } as const;
    expect(await ledger.moveJob({ ...wish, ifState: "on-bench" })).toMatchObject({ ok: true });
  });

  it("leaves what was approved before", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    await answerOf(ledger, asked, "approve");
    const again = anAskWish(asked.number, { work: "stop-riding", priceMinor: 55_500 });
    await ledger.askOwner(again);
    await ledger.answerApproval({ linkHash: asked.linkHash, approval: again.id, answer: "decline" });
    const job = await ledger.job(asked.number);
    expect(job?.agreed?.work).toBe("full-rebuild");
    expect(job?.history.at(-1)?.note).toContain("as agreed last");
  });
});

describe("going ahead without asking", () => {
  it("is allowed up to the owner's limit, and the history says so", async () => {
    const ledger = await aLedger();
    const job = await onBench(ledger, { booking: { goAheadMinor: 42_500 } });
    const wish = anAskWish(job.number, { goAhead: true });
    expect(await ledger.askOwner(wish)).toMatchObject({
      ok: true,
      value: {
        job: { state: "on-bench", agreed: { work: "full-rebuild" } },
        approval: { state: "approved", closed: { by: "go-ahead" } },
      },
    });
    const upgraded = (await ledger.job(job.number))!.history.filter(({ what }) => what === "work-upgraded");
    expect(upgraded).toMatchObject([{ who: "shop", staff: "Wilma Bench" }]);
    expect(upgraded[0]?.note).toContain("within the owner's “go ahead up to $425.00”");
    // Sent twice, it is done once.
    await ledger.askOwner(wish);
    expect((await ledger.job(job.number))!.history.filter(({ what }) => what === "work-upgraded")).toHaveLength(1);
  });

  it("is refused where the owner said nothing", async () => {
    const ledger = await aLedger();
    const { number } = await onBench(ledger, { booking: { goAheadMinor: null } });
    expect(await ledger.askOwner(anAskWish(number, { goAhead: true, priceMinor: 0 }))).toEqual({
      ok: false,
      refusal: { reason: "over-go-ahead" },
    });
  });
});

describe("a question that ends by itself", () => {
  it("ends at the alarm, and the shop goes on as agreed", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    await setClock(ledger, AFTER_UNTIL);
    await runDurableObjectAlarm(ledger);
    const job = await ledger.job(asked.number);
    expect(job).toMatchObject({ state: "on-bench", agreed: null });
    expect(job?.history.slice(-2).map(({ what }) => what)).toEqual(["approval-expired", "owner-answered"]);
    expect(await approvalNow(ledger, asked)).toMatchObject({ state: "expired", closed: { by: "time" } });
  });

  it("keeps no other work of the alarm from being done although it cannot be ended", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    vi.spyOn(console, "log").mockImplementation(() => {});
    await aBooking(ledger);
    expect(await countRows(ledger, "publication")).toBeGreaterThan(0);
    await runInDurableObject(ledger, (_, { storage }) =>
      storage.sql.exec("CREATE TRIGGER broken BEFORE UPDATE ON approval BEGIN SELECT RAISE(ABORT, 'no'); END"),
    );
    await setClock(ledger, AFTER_UNTIL);
    await runDurableObjectAlarm(ledger);
    expect(await countRows(ledger, "publication")).toBe(0);
    expect(await approvalNow(ledger, asked)).toMatchObject({ state: "open" });
    const alarm = await runInDurableObject(ledger, (_, { storage }) => storage.getAlarm());
    expect(alarm).toBe(AFTER_UNTIL + MINUTE);
  });

  it("sets the alarm for it", async () => {
    const ledger = await aLedger();
    const asked = await askedOwner(ledger);
    // The purge comes every six hours, so that the alarm comes sooner on most days: ask for a time right before the end.
    const { until } = await approvalNow(ledger, asked);
    await setClock(ledger, until - MINUTE);
    await runDurableObjectAlarm(ledger);
    const alarm = await runInDurableObject(ledger, (_, { storage }) => storage.getAlarm());
    expect(alarm).toBe(until + 1);
  });

  it("is taken along by a unit that is set aside or goes back", async () => {
    for (const move of ["set-aside", "return"] as const) {
      const ledger = await aLedger();
      const asked = await askedOwner(ledger);
      const { number } = asked;
      await ledger.moveJob({ number, move, staff: "Wilma", note: "Waits too long", ifState: "owner-to-decide" });
      expect((await approvalNow(ledger, asked)).state).toBe("withdrawn");
      expect(await answerOf(ledger, asked, "approve")).toEqual({
        ok: false,
        refusal: { reason: "closed", state: "withdrawn" },
      });
    }
  });
});

describe("talk about it", () => {
  it("keeps questions and answers in order, each once", async () => {
    const ledger = await aLedger();
    const { linkHash, number, approval } = await askedOwner(ledger);
    const ask = { linkHash, approval, text: "Can I see the old washers?", key: "k1" };
    const ownerAsks = async () => (await ledger.daySheet()).find((job) => job.number === number)?.ownerAsks;
    expect(await ownerAsks()).toBe(false);
    await ledger.askShop(ask);
    await ledger.askShop(ask);
    expect(await ownerAsks()).toBe(true);
    await setClock(ledger, FRIDAY + DAY);
    await ledger.replyToOwner({ number, approval, text: "Yes, we send them along.", key: "k2", staff: "Wilma Bench" });
    expect((await approvalNow(ledger, { linkHash })).words).toEqual([
      { at: FRIDAY, who: "owner", staff: null, text: "Can I see the old washers?" },
      { at: FRIDAY + DAY, who: "shop", staff: "Wilma Bench", text: "Yes, we send them along." },
    ]);
    expect(await ownerAsks()).toBe(false);
    expect((await ledger.job(number))?.state).toBe("owner-to-decide");
    expect((await eventsOf(ledger, number)).slice(-2)).toEqual(["owner owner-asked", "shop shop-replied"]);
  });

  it("keeps a question that comes after the end", async () => {
    const ledger = await aLedger();
    const { linkHash, approval } = await askedOwner(ledger);
    await setClock(ledger, AFTER_UNTIL);
    expect(await ledger.askShop({ linkHash, approval, text: "Sorry, was away.", key: "k" })).toMatchObject({
      ok: true,
      value: { state: "expired", words: [{ text: "Sorry, was away." }] },
    });
  });

  it("has an end", async () => {
    const ledger = await aLedger();
    const { linkHash, approval } = await askedOwner(ledger);
    for (let n = 0; n < 60; n += 1) await ledger.askShop({ linkHash, approval, text: "?", key: `${n}` });
    expect(await ledger.askShop({ linkHash, approval, text: "?", key: "one more" })).toEqual({
      ok: false,
      refusal: { reason: "too-many-words" },
    });
  });
});

it("another job's link opens none of it", async () => {
  const ledger = await aLedger();
  const other = await aBooking(ledger);
  const asked = await askedOwner(ledger);
  const { approval, number } = asked;
  const stranger = { ...asked, linkHash: other.linkHash };
  const none = { ok: false, refusal: { reason: "no-such-approval" } };
  expect(await answerOf(ledger, stranger, "approve")).toEqual(none);
  expect(await answerOf(ledger, { ...asked, linkHash: "nobody" }, "decline")).toEqual(none);
  expect(await ledger.askShop({ linkHash: other.linkHash, approval, text: "?", key: "k" })).toEqual(none);
  expect(await ledger.replyToOwner({ number: other.number, approval, text: "!", key: "k", staff: "W" })).toEqual(none);
  expect(await ledger.withdrawApproval({ number: other.number, approval, staff: "W" })).toEqual(none);
  expect(await ledger.approvalsByLink(other.linkHash)).toEqual([]);
  expect((await ledger.job(number))?.state).toBe("owner-to-decide");
});
