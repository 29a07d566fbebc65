/** Short texts of the owner's pages that belong to no question and no verdict. */
export const TAG_STARTS = "Your answers print here. Touch a line to change it.";
export const TAG_STOP = "Stop riding. Do not start the engine.";

export const INTRO =
  "A supercharger clutch wears. Service costs little; a broken one can throw metal through the engine. Answer a few questions and learn what yours needs.";

export const RESUME = {
  offer: "Go on later, or on another device",
  how: "Open this link there. It works for 14 days. Who has the link can read your answers.",
  title: "Go on with your answers",
  button: "Go on here",
  gone: "This link has ended. Start again: it takes two minutes.",
} as const;

/** Said aloud and shown when answers went because an earlier one changed; empty where none did. */
export const droppedWords = (labels: readonly string[]): string =>
  labels.length === 0 ? "" : `No longer needed, so taken off the tag: ${labels.join(", ")}.`;

/** Short messages that the script shows and has read aloud. */
export const SAID = {
  nothingSent: "No connection. What you wrote is still here. Please try again.",
  copied: "Link copied.",
  cannotCopy: "Copying is not allowed here. Select the link and copy it.",
  twoMinutes: "Two minutes left. Touch “Hold it longer” to keep the time.",
} as const;

/** After the last answer, while the answers are still on their way. */
export const WAITING = {
  title: "All answered",
  says: "Your verdict comes as soon as your answers reach the shop.",
} as const;

/** What the page says when the network is away. */
export const OFFLINE = {
  kept: "No connection. Your answers are kept on this device and will be sent later.",
  sent: "Connected again. Your answers are sent.",
} as const;
