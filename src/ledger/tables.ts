/*
 * Instants are epoch milliseconds (`..._at`, `until`), bench time is in quanta. Every slot keeps the wall time and zone
 * it was promised in beside its quanta, so that a change of the zone's law shows. Yes and no are 1 and 0, not sure is
 * NULL. Every page that a booking touches is written and awaited, so indexes are few, what is swept now and then is
 * scanned, and only tables of short rows are kept in the order of a random key: long rows go one after the other.
 */

const SLOT = `
  bench TEXT NOT NULL,
  bench_name TEXT NOT NULL,
  from_quantum INTEGER NOT NULL,
  to_quantum INTEGER NOT NULL CHECK (to_quantum > from_quantum),
  date TEXT NOT NULL,
  minute_of_day INTEGER NOT NULL,
  zone TEXT NOT NULL`;

/** The tables of the first step. */
export const TABLES = `
CREATE TABLE settings (
  version INTEGER PRIMARY KEY,
  saved_at INTEGER NOT NULL,
  settings TEXT NOT NULL
) STRICT;

CREATE TABLE counter (
  name TEXT PRIMARY KEY,
  value INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE zone_law (
  zone TEXT PRIMARY KEY,
  offsets TEXT NOT NULL
) STRICT, WITHOUT ROWID;

-- The key is the second guard of the first promise: no quarter-hour of a bench is ever taken twice. The claim is the id
-- of the hold that first took the time; a booking made of it, and moved later, keeps the claim.
CREATE TABLE bench_time (
  bench TEXT NOT NULL,
  quantum INTEGER NOT NULL,
  claim TEXT NOT NULL,
  PRIMARY KEY (bench, quantum)
) STRICT, WITHOUT ROWID;

CREATE TABLE hold (
  id TEXT PRIMARY KEY,
  state TEXT NOT NULL CHECK (state IN ('open', 'ended', 'booked')),
  source TEXT NOT NULL,
  draft TEXT,
  verdict TEXT NOT NULL,
  held_at INTEGER NOT NULL,
  until INTEGER NOT NULL,${SLOT}
) STRICT;
-- Benches have room for few open holds at a time: one index finds them all.
CREATE INDEX open_hold ON hold (until, source, draft) WHERE state = 'open';

CREATE TABLE owner (
  id INTEGER PRIMARY KEY,
  name TEXT NOT NULL,
  phone TEXT,
  email TEXT,
  reminder_text TEXT,
  reminder_agreed_at INTEGER,
  CHECK (phone IS NOT NULL OR email IS NOT NULL)
) STRICT;

CREATE TABLE craft (
  id INTEGER PRIMARY KEY,
  owner INTEGER NOT NULL REFERENCES owner (id),
  built_year INTEGER,
  riding TEXT NOT NULL,
  engine_modified INTEGER,
  charger_modified INTEGER,
  boost_psi REAL
) STRICT;

-- Units get swapped: the craft is the one it sits in now, since then.
CREATE TABLE unit (
  id INTEGER PRIMARY KEY,
  craft INTEGER NOT NULL REFERENCES craft (id),
  fitted_at INTEGER NOT NULL,
  family TEXT NOT NULL,
  serial TEXT,
  washers TEXT NOT NULL
) STRICT;

-- The unit's clocks: what was done to it, and who says so.
CREATE TABLE service (
  unit INTEGER NOT NULL REFERENCES unit (id),
  kind TEXT NOT NULL CHECK (kind IN ('rebuild', 'slip-set')),
  told_at INTEGER NOT NULL,
  told_by TEXT NOT NULL CHECK (told_by IN ('owner', 'bench')),
  date TEXT,
  engine_hours REAL,
  slip_left_at REAL,
  PRIMARY KEY (unit, told_at, kind)
) STRICT, WITHOUT ROWID;

CREATE TABLE job (
  serial INTEGER PRIMARY KEY,
  state TEXT NOT NULL CHECK (state IN ('booked', 'cancelled')),
  booked_at INTEGER NOT NULL,
  booked_by TEXT NOT NULL CHECK (booked_by IN ('owner', 'shop')),
  owner INTEGER NOT NULL REFERENCES owner (id),
  craft INTEGER NOT NULL REFERENCES craft (id),
  unit INTEGER NOT NULL REFERENCES unit (id),
  verdict TEXT NOT NULL,
  answers TEXT NOT NULL,
  plan TEXT NOT NULL,
  settings_version INTEGER NOT NULL REFERENCES settings (version),
  price_minor INTEGER NOT NULL,
  currency TEXT NOT NULL,
  go_ahead_minor INTEGER,
  return_to TEXT NOT NULL,
  post_by TEXT NOT NULL,
  link_generation INTEGER NOT NULL
) STRICT;

CREATE TABLE booking (
  job INTEGER PRIMARY KEY REFERENCES job (serial),
  id TEXT NOT NULL UNIQUE,
  claim TEXT NOT NULL,
  changeable_until INTEGER NOT NULL,
  sequence INTEGER NOT NULL,${SLOT}
) STRICT;
CREATE INDEX booking_by_end ON booking (to_quantum);

CREATE TABLE job_event (
  job INTEGER NOT NULL REFERENCES job (serial),
  step INTEGER NOT NULL,
  at INTEGER NOT NULL,
  who TEXT NOT NULL CHECK (who IN ('owner', 'shop')),
  what TEXT NOT NULL,
  PRIMARY KEY (job, step)
) STRICT, WITHOUT ROWID;

-- Only hashes of links are kept. A link whose generation is not its job's any more is dead.
CREATE TABLE link (
  hash TEXT PRIMARY KEY,
  purpose TEXT NOT NULL,
  subject INTEGER NOT NULL,
  generation INTEGER NOT NULL,
  expires_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE draft (
  token_hash TEXT PRIMARY KEY,
  draft TEXT NOT NULL,
  expires_at INTEGER NOT NULL
) STRICT;

CREATE TABLE wish (
  scope TEXT NOT NULL,
  key TEXT NOT NULL,
  fingerprint TEXT NOT NULL,
  answer TEXT NOT NULL,
  at INTEGER NOT NULL,
  PRIMARY KEY (scope, key)
) STRICT;

CREATE TABLE session (
  hash TEXT PRIMARY KEY,
  expires_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE used_link (
  nonce TEXT PRIMARY KEY,
  expires_at INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

-- What has to be put where everybody may read it: told after the decision is on disk, and again until it is done.
CREATE TABLE publication (
  key TEXT PRIMARY KEY,
  subject TEXT NOT NULL,
  version INTEGER NOT NULL,
  due_at INTEGER NOT NULL,
  tries INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
`;
