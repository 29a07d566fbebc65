import type { Child } from "hono/jsx";

export type Fact = readonly [label: string, said: Child];

/** Labels and what stands beside them. */
export const FactList = ({ facts }: { readonly facts: readonly Fact[] }) => (
  <dl class="facts">
    {facts.map(([label, said]) => (
      <>
        <dt>{label}</dt>
        <dd>{said}</dd>
      </>
    ))}
  </dl>
);
