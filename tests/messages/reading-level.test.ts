import { syllable } from "syllable";
import { describe, expect, it } from "vitest";
import { SYMPTOMS } from "#shared/craft/vocabulary.ts";
import * as cautions from "#shared/messages/cautions.ts";
import * as chartWords from "#shared/messages/chart-words.ts";
import * as checkWords from "#shared/messages/check-words.ts";
import * as contactWords from "#shared/messages/contact-words.ts";
import * as errorWords from "#shared/messages/error-words.ts";
import * as offerWords from "#shared/messages/offer-words.ts";
import * as optionWords from "#shared/messages/option-words.ts";
import * as ownerWords from "#shared/messages/owner-words.ts";
import * as pageWords from "#shared/messages/page-words.ts";
import { problemWords } from "#shared/messages/problem-words.ts";
import * as questionWords from "#shared/messages/question-words.ts";
import * as recordWords from "#shared/messages/record-words.ts";
import * as tagWords from "#shared/messages/tag-words.ts";
import * as verdictWords from "#shared/messages/verdict-words.ts";
import * as advice from "#shared/triage/advice-rules.ts";
import { judge } from "#shared/triage/judge.ts";
import { TRIAGE_DEFAULTS } from "#shared/triage/triage-settings.ts";
import { aCraft } from "#tests/support/a-craft.ts";

/** Guidance from public bodies: sentences of 15 to 20 words on average (Plain English Campaign), grade 8 or lower (US). */
const MOST_GRADE = 8;
const MOST_MEAN_WORDS = 20;
const MOST_WORDS = 25;

/** Everything that owners read, as sentences: the catalogue's texts and the rules' own. */
const sentences = [
  ...[
    cautions,
    chartWords,
    checkWords,
    contactWords,
    errorWords,
    offerWords,
    optionWords,
    ownerWords,
    pageWords,
    questionWords,
    recordWords,
    tagWords,
    verdictWords,
    advice,
  ].flatMap((module) => textsIn(module)),
  ...problems().map(problemWords),
  ...SYMPTOMS.flatMap((symptom) => judge(aCraft({ symptoms: [symptom] }), "2027-05-01", TRIAGE_DEFAULTS).reasons).map(
    ({ text }) => text,
  ),
  ...judge(aCraft({ builtYear: null, engineHours: 900 }), "2027-05-01", TRIAGE_DEFAULTS).reasons.map(
    ({ text }) => text,
  ),
].flatMap(sentencesOf);

describe("the words that owners read", () => {
  it("are there to be measured", () => {
    expect(sentences.length).toBeGreaterThan(100);
  });

  it(`are at reading grade ${MOST_GRADE} or below (Flesch-Kincaid grade level, 1975)`, () => {
    const words = sentences.flatMap(wordsOf);
    const syllables = words.reduce((sum, word) => sum + syllable(word), 0);
    expect(grade(words.length, sentences.length, syllables)).toBeLessThanOrEqual(MOST_GRADE);
  });

  it(`have sentences of ${MOST_MEAN_WORDS} words on average at the most, and none over ${MOST_WORDS}`, () => {
    const lengths = sentences.map((sentence) => wordsOf(sentence).length);
    expect(lengths.reduce((sum, length) => sum + length, 0) / lengths.length).toBeLessThanOrEqual(MOST_MEAN_WORDS);
    expect(sentences.filter((sentence) => wordsOf(sentence).length > MOST_WORDS)).toEqual([]);
  });
});

describe("the Flesch-Kincaid grade", () => {
  it.each([
    { words: 100, sentences: 8, syllables: 140, is: 5.805 },
    { words: 6, sentences: 1, syllables: 6, is: -1.45 },
  ])("of $words words, $sentences sentences and $syllables syllables is $is (worked by hand)", (it) => {
    expect(grade(it.words, it.sentences, it.syllables)).toBeCloseTo(it.is, 3);
  });
});

function grade(words: number, sentences: number, syllables: number): number {
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}

function textsIn(value: unknown): readonly string[] {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => (["id", "kind", "where"].includes(key) ? [] : textsIn(inner)));
}

/** A sentence has at least three words: labels of buttons and fields have no grammar to be hard. */
function sentencesOf(text: string): readonly string[] {
  return text.split(/(?<=[.?!:])\s+/).filter((sentence) => wordsOf(sentence).length >= 3);
}

function wordsOf(sentence: string): readonly string[] {
  return sentence.match(/[A-Za-z’']+/g) ?? [];
}

function problems(): readonly Parameters<typeof problemWords>[0][] {
  const field = "value";
  return [
    { field, problem: "choose-one" },
    { field, problem: "not-a-number" },
    { field, problem: "out-of-range", least: 0, most: 9 },
    { field, problem: "not-a-date" },
    { field, problem: "in-the-future", today: "2027-05-01" },
    { field, problem: "more-than-now", now: 212 },
  ];
}
