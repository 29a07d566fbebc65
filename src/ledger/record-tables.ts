/** Service records, chained: each hash covers the one before it and the record's own text. Nothing here is ever edited. */
export const RECORD_TABLES = `
CREATE TABLE record (
  step INTEGER PRIMARY KEY,
  job INTEGER NOT NULL REFERENCES job (serial),
  kind TEXT NOT NULL CHECK (kind IN ('service', 'correction', 'withdrawal')),
  at INTEGER NOT NULL,
  body TEXT NOT NULL,
  before TEXT NOT NULL,
  hash TEXT NOT NULL UNIQUE,
  -- Copied out of the body, to find a unit's history and the shop's lock-nut rises without reading every body.
  unit_serial TEXT,
  family TEXT NOT NULL,
  rise_before REAL,
  rise_after REAL
) STRICT;
CREATE INDEX record_of_job ON record (job, step);
CREATE INDEX record_of_unit ON record (unit_serial, step) WHERE unit_serial IS NOT NULL;
CREATE INDEX record_with_rise ON record (family, step) WHERE rise_after IS NOT NULL;
`;
