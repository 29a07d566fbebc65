import { FIND_JOB, FIND_JOB_PROBLEM } from "#shared/messages/shop-arrival-words.ts";
import { LabelledField } from "#src/bench/labelled-field.tsx";

type FindProps = { readonly typed?: string; readonly problem?: keyof typeof FIND_JOB_PROBLEM };

/** A job by its number, typed off its tag. */
export function FindJob({ typed = "", problem }: FindProps) {
  return (
    <form method="get" action="/shop/find" class="screen">
      <LabelledField
        name="number"
        label={FIND_JOB.label}
        hint={FIND_JOB.hint}
        problem={problem && FIND_JOB_PROBLEM[problem]}
        short
        control={(links) => (
          <input
            type="text"
            value={typed}
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            {...links}
          />
        )}
      />
      <p>
        <button type="submit">{FIND_JOB.button}</button>
      </p>
    </form>
  );
}
