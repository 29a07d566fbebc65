import type { Outcome } from "#shared/basics/outcome.ts";
import type { UnitFamily } from "#shared/craft/vocabulary.ts";
import type { CorrectionRefusal, CorrectionWish } from "#shared/job/record-correction.ts";
import type { ChainLines, ChainStanding, JobRise, RecordView } from "#shared/job/record-view.ts";

/** What the pages of records ask of the shop's object. */
export type RecordShop = {
  readonly record: (number: string) => Promise<RecordView | null>;
  readonly correctRecord: (wish: CorrectionWish) => Promise<Outcome<null, CorrectionRefusal>>;
  readonly chainStanding: () => Promise<ChainStanding>;
  readonly chainLines: (after: number) => Promise<ChainLines>;
  readonly rises: (family: UnitFamily) => Promise<readonly JobRise[]>;
};
