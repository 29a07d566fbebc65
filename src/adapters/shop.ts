/** One shop is one object; its name is part of where its data lies, so it never changes. */
export const SHOP_NAME = "main";

type ShopLedger = Env["SHOP"] extends DurableObjectNamespace<infer Shop> ? Shop : never;

/** The object's methods as they look from outside. The platform's own type breaks unions of answers into pieces. */
type Called = {
  readonly [Name in keyof ShopLedger]-?: ShopLedger[Name] extends (...asked: infer Asked) => infer Answer
    ? (...asked: Asked) => Promise<Awaited<Answer>>
    : never;
};
type Asked<Name extends keyof ShopLedger> = Parameters<Called[Name]>;

/**
 * The shop's object, one function a question. A call that was lost on the way is made once more where that does no
 * harm: readings, wishes that carry a key, and changes that change nothing the second time.
 */
export function shopPort({ SHOP }: Pick<Env, "SHOP">) {
  const stub = () => SHOP.getByName(SHOP_NAME) as unknown as Called;
  const again = async <Answer>(ask: (shop: Called) => Promise<Answer>): Promise<Answer> => {
    try {
      return await ask(stub());
    } catch (error) {
      if (!mayAskAgain(error)) throw error;
      return ask(stub());
    }
  };
  return {
    settings: () => again((shop) => shop.settings()),
    saveSettings: (...asked: Asked<"saveSettings">) => stub().saveSettings(...asked),
    board: () => again((shop) => shop.board()),
    offers: (...asked: Asked<"offers">) => again((shop) => shop.offers(...asked)),
    hold: (...asked: Asked<"hold">) => again((shop) => shop.hold(...asked)),
    book: (...asked: Asked<"book">) => again((shop) => shop.book(...asked)),
    moveBooking: (...asked: Asked<"moveBooking">) => again((shop) => shop.moveBooking(...asked)),
    cancelBooking: (...asked: Asked<"cancelBooking">) => again((shop) => shop.cancelBooking(...asked)),
    moveJob: (...asked: Asked<"moveJob">) => again((shop) => shop.moveJob(...asked)),
    undoMove: (...asked: Asked<"undoMove">) => again((shop) => shop.undoMove(...asked)),
    job: (...asked: Asked<"job">) => again((shop) => shop.job(...asked)),
    jobByLink: (...asked: Asked<"jobByLink">) => again((shop) => shop.jobByLink(...asked)),
    reissueLink: (...asked: Asked<"reissueLink">) => stub().reissueLink(...asked),
    sheet: (...asked: Asked<"sheet">) => again((shop) => shop.sheet(...asked)),
    keepEntry: (...asked: Asked<"keepEntry">) => again((shop) => shop.keepEntry(...asked)),
    askStart: (...asked: Asked<"askStart">) => again((shop) => shop.askStart(...asked)),
    askOwner: (...asked: Asked<"askOwner">) => again((shop) => shop.askOwner(...asked)),
    withdrawApproval: (...asked: Asked<"withdrawApproval">) => again((shop) => shop.withdrawApproval(...asked)),
    replyToOwner: (...asked: Asked<"replyToOwner">) => again((shop) => shop.replyToOwner(...asked)),
    approvalsByLink: (...asked: Asked<"approvalsByLink">) => again((shop) => shop.approvalsByLink(...asked)),
    findingsByLink: (...asked: Asked<"findingsByLink">) => again((shop) => shop.findingsByLink(...asked)),
    answerApproval: (...asked: Asked<"answerApproval">) => again((shop) => shop.answerApproval(...asked)),
    askShop: (...asked: Asked<"askShop">) => again((shop) => shop.askShop(...asked)),
    arrivals: () => again((shop) => shop.arrivals()),
    stock: () => again((shop) => shop.stock()),
    shelf: (...asked: Asked<"shelf">) => again((shop) => shop.shelf(...asked)),
    receiveParts: (...asked: Asked<"receiveParts">) => again((shop) => shop.receiveParts(...asked)),
    countParts: (...asked: Asked<"countParts">) => again((shop) => shop.countParts(...asked)),
    jobParts: (...asked: Asked<"jobParts">) => again((shop) => shop.jobParts(...asked)),
    usePart: (...asked: Asked<"usePart">) => again((shop) => shop.usePart(...asked)),
    takePartBack: (...asked: Asked<"takePartBack">) => again((shop) => shop.takePartBack(...asked)),
    layOutPart: (...asked: Asked<"layOutPart">) => again((shop) => shop.layOutPart(...asked)),
    daySheet: () => again((shop) => shop.daySheet()),
    record: (...asked: Asked<"record">) => again((shop) => shop.record(...asked)),
    recordByLink: (...asked: Asked<"recordByLink">) => again((shop) => shop.recordByLink(...asked)),
    correctRecord: (...asked: Asked<"correctRecord">) => stub().correctRecord(...asked),
    checkCode: (...asked: Asked<"checkCode">) => again((shop) => shop.checkCode(...asked)),
    chainStanding: () => again((shop) => shop.chainStanding()),
    chainLines: (...asked: Asked<"chainLines">) => again((shop) => shop.chainLines(...asked)),
    rises: (...asked: Asked<"rises">) => again((shop) => shop.rises(...asked)),
    photos: (...asked: Asked<"photos">) => again((shop) => shop.photos(...asked)),
    photo: (...asked: Asked<"photo">) => again((shop) => shop.photo(...asked)),
    photoByLink: (...asked: Asked<"photoByLink">) => again((shop) => shop.photoByLink(...asked)),
    announcePhoto: (...asked: Asked<"announcePhoto">) => stub().announcePhoto(...asked),
    keepPhoto: (...asked: Asked<"keepPhoto">) => again((shop) => shop.keepPhoto(...asked)),
    removePhoto: (...asked: Asked<"removePhoto">) => again((shop) => shop.removePhoto(...asked)),
    receipt: (...asked: Asked<"receipt">) => again((shop) => shop.receipt(...asked)),
    draft: (...asked: Asked<"draft">) => again((shop) => shop.draft(...asked)),
    keepAnswer: (...asked: Asked<"keepAnswer">) => again((shop) => shop.keepAnswer(...asked)),
    forgetDraft: (...asked: Asked<"forgetDraft">) => again((shop) => shop.forgetDraft(...asked)),
    failedSignIn: (...asked: Asked<"failedSignIn">) => stub().failedSignIn(...asked),
    askToSignIn: (...asked: Asked<"askToSignIn">) => stub().askToSignIn(...asked),
    tryToSignIn: (...asked: Asked<"tryToSignIn">) => stub().tryToSignIn(...asked),
    signInByPasskey: (...asked: Asked<"signInByPasskey">) => stub().signInByPasskey(...asked),
    askForPasskey: (...asked: Asked<"askForPasskey">) => stub().askForPasskey(...asked),
    usePasskeyChallenge: (...asked: Asked<"usePasskeyChallenge">) => stub().usePasskeyChallenge(...asked),
    addPasskey: (...asked: Asked<"addPasskey">) => stub().addPasskey(...asked),
    noteInvitation: (...asked: Asked<"noteInvitation">) => stub().noteInvitation(...asked),
    openInvitation: (...asked: Asked<"openInvitation">) => again((shop) => shop.openInvitation(...asked)),
    askInvited: (...asked: Asked<"askInvited">) => stub().askInvited(...asked),
    useInviteChallenge: (...asked: Asked<"useInviteChallenge">) => stub().useInviteChallenge(...asked),
    join: (...asked: Asked<"join">) => stub().join(...asked),
    accounts: () => again((shop) => shop.accounts()),
    account: (...asked: Asked<"account">) => again((shop) => shop.account(...asked)),
    changeStaff: (...asked: Asked<"changeStaff">) => stub().changeStaff(...asked),
    staffEvents: () => again((shop) => shop.staffEvents()),
    openSession: (...asked: Asked<"openSession">) => stub().openSession(...asked),
    session: (...asked: Asked<"session">) => again((shop) => shop.session(...asked)),
    closeSession: (...asked: Asked<"closeSession">) => again((shop) => shop.closeSession(...asked)),
  };
}

/** The platform marks errors after which the call may simply be made again, on a new stub: the old one is broken. */
const mayAskAgain = (error: unknown): boolean =>
  error instanceof Error && "retryable" in error && error.retryable === true && !("overloaded" in error);
