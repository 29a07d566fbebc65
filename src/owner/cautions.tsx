import { sourceText } from "#shared/basics/source.ts";
import { ADVICE_ONLY, cautionsFor, type SignalWord } from "#shared/messages/cautions.ts";
import { PAGE_WORDS } from "#shared/messages/page-words.ts";
import type { Verdict } from "#shared/triage/verdict.ts";

const LOOKS: Readonly<Record<SignalWord, string>> = {
  DANGER: "danger",
  WARNING: "warning",
  CAUTION: "caution",
  NOTICE: "note",
};

type CautionsProps = {
  readonly verdict: Verdict;
  /** The unit is off the craft and posted already: what is over is not said again. */
  readonly unitIsHere?: boolean;
};

/** The cautions that go with a verdict, each with its signal word and source. */
export function Cautions({ verdict, unitIsHere = false }: CautionsProps) {
  const cautions = cautionsFor(verdict).filter(({ onceOffTheCraft }) => !unitIsHere || onceOffTheCraft);
  return (
    <section aria-labelledby="cautions">
      <h2 id="cautions">{PAGE_WORDS.takeCare}</h2>
      {cautions.map(({ signal, text, source }) => (
        <div class={`signal ${LOOKS[signal]}`}>
          <b>{signal === "NOTICE" ? signal : `⚠ ${signal}`}</b>
          <p>
            {text} <small>({sourceText(source)})</small>
          </p>
        </div>
      ))}
      <p>{ADVICE_ONLY}</p>
    </section>
  );
}
