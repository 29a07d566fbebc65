/** What an owner was asked to approve, and the answer. */
export const APPROVAL_TABLES = `
CREATE TABLE approval (
  id TEXT PRIMARY KEY,
  job INTEGER NOT NULL REFERENCES job (serial),
  state TEXT NOT NULL CHECK (state IN ('open', 'approved', 'declined', 'withdrawn', 'expired')),
  asked_at INTEGER NOT NULL,
  asked_by TEXT NOT NULL,
  work TEXT NOT NULL,
  why TEXT NOT NULL,
  photo TEXT REFERENCES photo (id),
  price_minor INTEGER NOT NULL,
  currency TEXT NOT NULL,
  until INTEGER NOT NULL,
  answered_at INTEGER,
  answered_by TEXT,
  note TEXT
) STRICT;
CREATE INDEX approval_of_job ON approval (job, asked_at);
CREATE INDEX open_approval ON approval (until) WHERE state = 'open';

-- Questions and answers about an approval, in order.
CREATE TABLE approval_word (
  approval TEXT NOT NULL REFERENCES approval (id),
  step INTEGER NOT NULL,
  at INTEGER NOT NULL,
  who TEXT NOT NULL CHECK (who IN ('owner', 'shop')),
  staff TEXT,
  text TEXT NOT NULL,
  PRIMARY KEY (approval, step)
) STRICT;
`;
