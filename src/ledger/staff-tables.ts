import { STAFF_ROLES } from "#shared/shop/staff.ts";

/** Who works at the shop, by which passkeys they sign in, and whose session is whose. */
export const STAFF_TABLES = `
CREATE TABLE staff (
  id INTEGER PRIMARY KEY,
  -- What a passkey keeps of its account: opaque, so that an authenticator tells nobody who works here.
  handle TEXT NOT NULL UNIQUE,
  name TEXT NOT NULL,
  role TEXT NOT NULL CHECK (role IN (${STAFF_ROLES.map((role) => `'${role}'`).join(", ")})),
  added_at INTEGER NOT NULL,
  left_at INTEGER
) STRICT;

CREATE TABLE passkey (
  id TEXT PRIMARY KEY,
  staff INTEGER NOT NULL REFERENCES staff (id),
  public_key TEXT NOT NULL,
  algorithm TEXT NOT NULL,
  counter INTEGER NOT NULL,
  transports TEXT NOT NULL,
  label TEXT NOT NULL,
  added_at INTEGER NOT NULL,
  used_at INTEGER
) STRICT;
CREATE INDEX passkey_staff ON passkey (staff);

-- A challenge is answered once, and soon.
CREATE TABLE challenge (
  challenge TEXT PRIMARY KEY,
  purpose TEXT NOT NULL,
  -- For whose passkey; empty where nobody is known yet.
  handle TEXT NOT NULL,
  source TEXT NOT NULL,
  expires_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX challenge_source ON challenge (source, expires_at);

-- Each try is noted before it is looked at and struck out when it succeeds, so that many at once are counted too.
CREATE TABLE sign_in_try (
  id INTEGER PRIMARY KEY AUTOINCREMENT,
  source TEXT NOT NULL,
  at INTEGER NOT NULL
) STRICT;
CREATE INDEX sign_in_try_source ON sign_in_try (source, at);

-- What changed accounts and settings, and who did it; what changed a job is in the job's own history.
CREATE TABLE staff_event (
  step INTEGER PRIMARY KEY,
  at INTEGER NOT NULL,
  staff TEXT,
  what TEXT NOT NULL,
  about TEXT
) STRICT;

-- Everybody signs in anew: a session from before accounts is nobody's.
DELETE FROM session;
ALTER TABLE session ADD COLUMN staff INTEGER REFERENCES staff (id);
ALTER TABLE session ADD COLUMN opened_at INTEGER NOT NULL DEFAULT 0;
ALTER TABLE session ADD COLUMN seen_at INTEGER NOT NULL DEFAULT 0;
-- The passkey that opened it; null where a link did.
ALTER TABLE session ADD COLUMN passkey TEXT;
CREATE INDEX session_staff ON session (staff);
`;
