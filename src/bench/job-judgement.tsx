import { sourceText } from "#shared/basics/source.ts";
import type { Answers } from "#shared/craft/vocabulary.ts";
import { optionWords } from "#shared/messages/option-words.ts";
import { JOB } from "#shared/messages/shop-job-words.ts";
import { SHOP_DEBRIS } from "#shared/messages/shop-words.ts";
import { ENGINE_DEBRIS_SOURCE } from "#shared/triage/engine-debris.ts";
import type { Judgement, Reason } from "#shared/triage/judge.ts";
import { type Suspect, suspectsFor } from "#shared/triage/suspects.ts";

type JudgementProps = { readonly answers: Answers; readonly judgement: Judgement };

/** Why the verdict, what may have failed, and what that did to the engine. */
export function JobJudgement({ answers, judgement }: JudgementProps) {
  const debris = SHOP_DEBRIS[judgement.engineDebris];
  return (
    <>
      <h2>{JOB.reasons}</h2>
      <Reasons reasons={judgement.reasons} />
      {judgement.advice.length > 0 && (
        <>
          <h2>{JOB.advice}</h2>
          <Reasons reasons={judgement.advice} />
        </>
      )}
      <h2>{JOB.suspects}</h2>
      <Suspects suspects={suspectsFor(answers.symptoms, mayBeCeramic(judgement))} />
      <h2>{JOB.debris}</h2>
      <p>
        <strong>{debris.word}.</strong> {debris.means} <small>{JOB.source(sourceText(ENGINE_DEBRIS_SOURCE))}</small>
      </p>
    </>
  );
}

/** As the rules judged it then: the settings may have changed since. */
const mayBeCeramic = ({ reasons }: Judgement): boolean => reasons.some(({ rule }) => rule === "ceramic-with-symptom");

/** Worst first, as judged. */
export const Reasons = ({ reasons }: { readonly reasons: readonly Reason[] }) => (
  <ol>
    {reasons.map(({ text, source }) => (
      <li>
        {text} <small>{JOB.source(source)}</small>
      </li>
    ))}
  </ol>
);

function Suspects({ suspects }: { readonly suspects: readonly Suspect[] }) {
  if (suspects.length === 0) return <p>{JOB.noSuspects}</p>;
  return (
    <>
      <p id="suspects-hint">{JOB.suspectsHint}</p>
      <section class="scroll" tabindex={0} aria-label={JOB.suspects}>
        <table aria-describedby="suspects-hint">
          <thead>
            <tr>
              <th scope="col">{JOB.failure}</th>
              <th scope="col">{JOB.pointedToBy}</th>
              <th scope="col">{JOB.inEngine}</th>
            </tr>
          </thead>
          <tbody>
            {suspects.map(({ failure, pointedToBy, debris, source }) => (
              <tr>
                <th scope="row">
                  {failure} <small>{JOB.source(sourceText(source))}</small>
                </th>
                <td>{pointedToBy.map((symptom) => optionWords("symptoms", symptom)).join("; ")}</td>
                <td>{debris}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}
