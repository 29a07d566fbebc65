/** `kept`: the queue is another. `shown`: the page is another. `send` and `stale`: somebody wants either brought up to date. */
type News = "kept" | "shown" | "send" | "stale";

/** The parts of the sheet's script tell each other what has changed, so that none has to know all others. */
export const tell = (news: News): boolean => document.dispatchEvent(new Event(`sheet-${news}`));

export const on = (news: News, hook: () => void): void => document.addEventListener(`sheet-${news}`, hook);
