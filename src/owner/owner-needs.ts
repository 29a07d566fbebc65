import type { Context } from "hono";
import type { Outcome } from "#shared/basics/outcome.ts";
import type { SlotBoard } from "#shared/calendar/board-schema.ts";
import type { Offer } from "#shared/calendar/find-offers.ts";
import type { QuestionId } from "#shared/intake/draft.ts";
import type { Approval } from "#shared/job/approval.ts";
import type { AnswerRefusal, AnswerWish, Asked, OwnerWord, WordRefusal } from "#shared/job/approval-wish.ts";
import type { BenchFindings } from "#shared/job/bench-findings.ts";
import type { Photo } from "#shared/job/photo.ts";
import type { RecordCode } from "#shared/job/record-code.ts";
import type { CodeStanding } from "#shared/job/record-standing.ts";
import type { RecordView } from "#shared/job/record-view.ts";
import type {
  Booking,
  BookingRefusal,
  BookingWish,
  ChangeRefusal,
  Hold,
  HoldRefusal,
  HoldWish,
  Job,
  StoredDraft,
} from "#shared/shop/booking.ts";
import type { SettingsVersion } from "#shared/shop/shop-settings.ts";
import type { Verdict } from "#shared/triage/verdict.ts";
import type { PhotoStore } from "#src/http/photo-store.ts";

type KeptAnswer = { readonly tokenHash: string; readonly question: QuestionId; readonly answer: unknown };
/** What to ask next, null = nothing; and the answers that went because they no longer apply. */
type Kept = { readonly next: QuestionId | null; readonly dropped: readonly QuestionId[] };
type OwnersChange = { readonly booking: string; readonly linkHash: string; readonly by: "owner" };

/** What the owner's pages ask of the shop's object. */
export type OwnerShop = {
  readonly settings: () => Promise<SettingsVersion>;
  readonly draft: (tokenHash: string) => Promise<StoredDraft | null>;
  readonly keepAnswer: (wish: KeptAnswer) => Promise<Outcome<Kept, { readonly reason: "too-many-drafts" }>>;
  readonly forgetDraft: (tokenHash: string) => Promise<void>;
  readonly board: () => Promise<SlotBoard>;
  readonly offers: (ask: { readonly verdict: Verdict }) => Promise<readonly Offer[]>;
  readonly hold: (wish: HoldWish) => Promise<Outcome<Hold, HoldRefusal>>;
  readonly book: (wish: BookingWish) => Promise<Outcome<Booking, BookingRefusal>>;
  readonly jobByLink: (linkHash: string) => Promise<Job | null>;
  readonly approvalsByLink: (linkHash: string) => Promise<readonly Approval[]>;
  readonly findingsByLink: (linkHash: string) => Promise<BenchFindings | null>;
  readonly answerApproval: (wish: AnswerWish) => Promise<Outcome<Asked, AnswerRefusal>>;
  readonly askShop: (wish: OwnerWord) => Promise<Outcome<Approval, WordRefusal>>;
  readonly recordByLink: (linkHash: string) => Promise<RecordView | null>;
  readonly checkCode: (code: RecordCode) => Promise<CodeStanding>;
  readonly photoByLink: (ask: { readonly linkHash: string; readonly id: string }) => Promise<Photo | null>;
  readonly moveBooking: (wish: OwnersChange & { readonly offer: string }) => Promise<Outcome<Job, ChangeRefusal>>;
  readonly cancelBooking: (wish: OwnersChange) => Promise<Outcome<Job, ChangeRefusal>>;
};

/** Everything the owner's pages need from outside. */
export type OwnerNeeds = {
  readonly shop: OwnerShop;
  /** The published copy of the slot board: `null` where there is none, or none fresh enough. */
  readonly publishedBoard: (now: number) => Promise<SlotBoard | null>;
  /** Epoch milliseconds. */
  readonly now: () => number;
  readonly linkKey: string;
  /** Where photos lie; null = nowhere. */
  readonly photoStore: PhotoStore | null;
  /** Where the public reaches the site. */
  readonly origin: (request: Request) => string;
  /** At least 128 random bits, as text that fits a URL. */
  readonly newId: () => string;
  /** Is this device signed in to the shop? */
  readonly isStaff: (c: Context) => Promise<boolean>;
  /** Whose open holds are counted together: a hash. */
  readonly sourceOf: (request: Request) => Promise<string>;
};
