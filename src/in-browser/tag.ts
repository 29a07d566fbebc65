import type { Draft } from "#shared/intake/draft.ts";
import { stopAtOnce } from "#shared/intake/stop-at-once.ts";
import { tagLines } from "#shared/messages/tag-lines.ts";
import { element } from "#src/in-browser/element.ts";

/** Prints the answers onto the tag, as the worker does it on its pages. */
export function redrawTag(draft: Draft): void {
  const tag = document.getElementById("tag");
  if (tag === null) return;
  const lines = tagLines(draft);
  tag.querySelector("ol")?.replaceChildren(
    ...lines.map(({ id, label, value }) => {
      const link = element("a", element("span", label), element("b", value));
      link.href = `/intake/${id}`;
      return element("li", link);
    }),
  );
  for (const [selector, hidden] of [
    [".faint", lines.length > 0],
    [".stop", !stopAtOnce(draft)],
  ] as const) {
    tag.querySelector(selector)?.toggleAttribute("hidden", hidden);
  }
}
