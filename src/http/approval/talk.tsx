import type { ApprovalWord } from "#shared/job/approval.ts";
import { timeText } from "#shared/messages/time-words.ts";

type TalkProps = {
  readonly words: readonly ApprovalWord[];
  readonly title: string;
  /** Who said it, as this page calls them. */
  readonly nameOf: (word: ApprovalWord) => string;
  readonly zone: string;
  readonly locale: string;
};

/** Questions and answers about what is asked, in order. */
export function Talk({ words, title, nameOf, zone, locale }: TalkProps) {
  if (words.length === 0) return null;
  return (
    <>
      <h2>{title}</h2>
      <ol class="said">
        {words.map((word) => (
          <li>
            <p class="faint">
              {nameOf(word)}, {timeText(word.at, zone, locale)}
            </p>
            <p class="as-typed">{word.text}</p>
          </li>
        ))}
      </ol>
    </>
  );
}
