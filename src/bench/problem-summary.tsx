type SummaryProps = {
  readonly title: (count: number) => string;
  readonly says: string;
  /** Each field that is not accepted, by its id. */
  readonly problems: readonly { readonly field: string; readonly label: string }[];
};

/** What is wrong in a form, first on the page, with a link to each field. */
export function ProblemSummary({ title, says, problems }: SummaryProps) {
  if (problems.length === 0) return null;
  return (
    <section class="problem" role="alert" aria-labelledby="problems">
      <h2 id="problems">{title(problems.length)}</h2>
      <p>{says}</p>
      <ul>
        {problems.map(({ field, label }) => (
          <li>
            <a href={`#${field}`}>{label}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}
