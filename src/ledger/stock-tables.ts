/** Parts on hand are the sum of what came and went: receipts, use, and counts put right. */
export const STOCK_TABLES = `
CREATE TABLE stock_entry (
  step INTEGER PRIMARY KEY,
  part TEXT NOT NULL,
  family TEXT NOT NULL,
  kind TEXT NOT NULL CHECK (kind IN ('receipt', 'use', 'use-undone', 'count')),
  change INTEGER NOT NULL,
  job INTEGER REFERENCES job (serial),
  at INTEGER NOT NULL,
  staff TEXT NOT NULL,
  note TEXT,
  key TEXT NOT NULL UNIQUE
) STRICT;
CREATE INDEX stock_of_part ON stock_entry (part, family, change);
CREATE INDEX stock_of_job ON stock_entry (job) WHERE job IS NOT NULL;
`;
