/** Parts on hand are the sum of what came and went: receipts, use, and counts put right. Nothing here is ever edited. */
export const STOCK_TABLES = `
CREATE TABLE stock_entry (
  step INTEGER PRIMARY KEY,
  part TEXT NOT NULL,
  family TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('receipt', 'use', 'use-undone', 'count')),
  change INTEGER NOT NULL,
  -- What the book says after this entry, so that the newest entry of a shelf tells all without adding up the rest.
  on_hand INTEGER NOT NULL,
  count_again INTEGER NOT NULL,
  job INTEGER REFERENCES job (serial),
  at INTEGER NOT NULL,
  staff TEXT NOT NULL,
  note TEXT,
  -- Made by the page that asked, so that a form sent twice counts once.
  key TEXT NOT NULL UNIQUE
) STRICT;
CREATE INDEX stock_of_shelf ON stock_entry (part, family);
CREATE INDEX stock_of_job ON stock_entry (job) WHERE job IS NOT NULL;

-- What the bench added to a job's plan, or found that it does not need.
CREATE TABLE laid_out (
  step INTEGER PRIMARY KEY,
  job INTEGER NOT NULL REFERENCES job (serial),
  part TEXT NOT NULL,
  change INTEGER NOT NULL,
  at INTEGER NOT NULL,
  staff TEXT NOT NULL,
  key TEXT NOT NULL UNIQUE
) STRICT;
CREATE INDEX laid_out_of_job ON laid_out (job);
`;
