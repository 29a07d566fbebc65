const inBody = (name: string, type: string, path: string) =>
  `${name} ${type} GENERATED ALWAYS AS (json_extract(body, '$.${path}')) VIRTUAL`;

/**
 * Service records, chained: each hash covers the one before it and the record's own text. What records are found by is
 * read off the text by the database, so it can say nothing else; and the database itself refuses to edit or drop one.
 */
export const RECORD_TABLES = `
CREATE TABLE record (
  step INTEGER PRIMARY KEY,
  before TEXT NOT NULL UNIQUE,
  body TEXT NOT NULL,
  hash TEXT NOT NULL UNIQUE,
  ${inBody("job", "TEXT", "job")},
  ${inBody("kind", "TEXT", "kind")},
  ${inBody("family", "TEXT", "service.unit.family")},
  ${inBody("unit_serial", "TEXT", "service.unit.serial")},
  ${inBody("rise_before", "REAL", "service.left.rise.before")},
  ${inBody("rise_after", "REAL", "service.left.rise.after")}
) STRICT;
CREATE INDEX record_of_job ON record (job, step);
CREATE INDEX record_of_unit ON record (unit_serial, step) WHERE unit_serial IS NOT NULL;
CREATE INDEX record_with_rise ON record (family, step, job, rise_before, rise_after) WHERE rise_after IS NOT NULL;

CREATE TRIGGER record_is_never_edited BEFORE UPDATE ON record
  BEGIN SELECT RAISE(ABORT, 'A service record is never edited'); END;
CREATE TRIGGER record_is_never_dropped BEFORE DELETE ON record
  BEGIN SELECT RAISE(ABORT, 'A service record is never dropped'); END;
`;
