import type { Outcome } from "#shared/basics/outcome.ts";
import type { Approval } from "#shared/job/approval.ts";
import type {
  AnswerRefusal,
  Asked,
  AskRefusal,
  AskStart,
  AskWish,
  ShopWord,
  WithdrawWish,
  WordRefusal,
} from "#shared/job/approval-wish.ts";

/** What asking an owner needs of the shop's object. */
export type AskShop = {
  readonly askStart: (number: string) => Promise<AskStart | null>;
  readonly askOwner: (wish: AskWish) => Promise<Outcome<Asked, AskRefusal>>;
  readonly replyToOwner: (wish: ShopWord) => Promise<Outcome<Approval, WordRefusal>>;
  readonly withdrawApproval: (wish: WithdrawWish) => Promise<Outcome<Asked, AnswerRefusal>>;
};
