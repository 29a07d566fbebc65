import type { Symptom } from "#shared/craft/vocabulary.ts";
import type { Draft } from "#shared/intake/draft.ts";

/** Symptoms that mean stop riding on their own, so that nobody has to finish the conversation to be told. */
const STOP_AT_ONCE: readonly Symptom[] = ["metal-in-oil", "grinding", "sudden-boost-loss", "impeller-wobble"];

/** @example stopAtOnce({ symptoms: { noticed: ["grinding"], notLooked: false } }) // true */
export const stopAtOnce = ({ symptoms }: Draft): boolean =>
  symptoms?.noticed.some((symptom) => STOP_AT_ONCE.includes(symptom)) ?? false;
