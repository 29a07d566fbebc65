/** The bench sheet: appended, never edited, so that what was written over can still be read. */
export const SHEET_TABLES = `
CREATE TABLE sheet_entry (
  job INTEGER NOT NULL REFERENCES job (serial),
  step TEXT NOT NULL,
  version INTEGER NOT NULL,
  -- Made by the device that wrote it, so that what is sent twice is kept once.
  key TEXT NOT NULL UNIQUE,
  at INTEGER NOT NULL,
  staff TEXT NOT NULL,
  entry TEXT NOT NULL,
  PRIMARY KEY (job, step, version)
) STRICT;

CREATE TABLE photo (
  id TEXT PRIMARY KEY,
  -- Made by the device that sent it, so that what is sent twice is kept once.
  key TEXT NOT NULL UNIQUE,
  job INTEGER NOT NULL REFERENCES job (serial),
  step TEXT NOT NULL,
  part TEXT,
  type TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  sha256 TEXT NOT NULL,
  at INTEGER NOT NULL,
  staff TEXT NOT NULL,
  removed_at INTEGER
) STRICT;
CREATE INDEX photo_of_job ON photo (job);

-- A photo's bytes lie outside of this database. Before they are stored they are announced here, to be dropped in an hour
-- where no row of a photo claims them; a removed photo's bytes are put here too. So none is ever left behind.
CREATE TABLE photo_bytes (
  id TEXT PRIMARY KEY,
  state TEXT NOT NULL CHECK (state IN ('coming', 'to-drop')),
  due_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
`;
