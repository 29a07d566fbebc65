import type { Draft, QuestionId } from "#shared/intake/draft.ts";

type YesNoNotSure = Readonly<Record<"yes" | "no" | "unknown", string>>;
const YES_NO: YesNoNotSure = { yes: "Yes", no: "No", unknown: "Not sure" };

/** What stands on the buttons, and so on the tag, for each answer that is picked from a list. */
export const OPTION_WORDS = {
  symptoms: {
    "metal-in-oil": "Metal glitter in the oil",
    grinding: "A grinding noise",
    "sudden-boost-loss": "Boost gone all at once",
    "gradual-boost-loss": "Boost or top speed fading slowly",
    "impeller-wobble": "Impeller wobbles or rubs",
    whine: "A new whine",
    "burnt-smell": "A burnt smell",
    "limp-mode": "Engine in limp mode",
    "oil-in-intake": "Oil in the intake",
  },
  unitFamily: { "shim-stack": "Shim stack", "set-nut": "Set nut", unknown: "Not sure" },
  riding: { easy: "Gently", mixed: "A bit of both", hard: "Hard", unknown: "Not sure" },
  engineModified: YES_NO,
  chargerModified: YES_NO,
  changedSinceSlip: YES_NO,
  washers: { ceramic: "Ceramic", metal: "Metal", unknown: "Not sure" },
  washersAgain: { ceramic: "Yes, ceramic", metal: "No, metal", unknown: "Not sure" },
} as const satisfies { readonly [Id in QuestionId]?: Readonly<Record<string, string>> };

export const NOT_LOOKED = "I have not looked at the oil";
export const NOTHING_NOTICED = "None of these";
export const NOT_SURE = "Not sure";

/** The words of one picked answer; the answer itself where it has none. */
export function optionWords(id: keyof Draft, option: string): string {
  const words: Readonly<Record<string, string>> =
    id in OPTION_WORDS ? OPTION_WORDS[id as keyof typeof OPTION_WORDS] : {};
  return words[option] ?? option;
}
