import { APPROVAL_CLOSERS, APPROVAL_STATES } from "#shared/job/approval.ts";

const listed = (words: readonly string[]) => words.map((word) => `'${word}'`).join(", ");

/** What an owner was asked to approve, what was said about it, and what a job is about since. */
export const APPROVAL_TABLES = `
-- The work as approved last, whole, as it was shown; NULL = as booked. What the owner was told at the booking stays in
-- plan, price_minor and currency.
ALTER TABLE job ADD COLUMN agreed TEXT;
-- 1 = more work was approved than the bench had time for: the booked time does not hold it.
ALTER TABLE job ADD COLUMN needs_bench_time INTEGER NOT NULL DEFAULT 0 CHECK (needs_bench_time IN (0, 1));

CREATE TABLE approval (
  id TEXT PRIMARY KEY,
  job INTEGER NOT NULL REFERENCES job (serial),
  state TEXT NOT NULL CHECK (state IN (${listed(APPROVAL_STATES)})),
  asked_at INTEGER NOT NULL,
  asked_by TEXT NOT NULL,
  offered TEXT NOT NULL,
  why TEXT NOT NULL,
  photo TEXT REFERENCES photo (id),
  told TEXT NOT NULL,
  until INTEGER NOT NULL,
  closed_at INTEGER,
  closed_by TEXT CHECK (closed_by IN (${listed(APPROVAL_CLOSERS)})),
  note TEXT,
  CHECK ((state = 'open') = (closed_at IS NULL)),
  CHECK ((closed_at IS NULL) = (closed_by IS NULL))
) STRICT;
CREATE INDEX approval_of_job ON approval (job, asked_at);
-- One question at a time, so that an answer is never given to another one than was read.
CREATE UNIQUE INDEX open_approval_of_job ON approval (job) WHERE state = 'open';
CREATE INDEX open_approval ON approval (until) WHERE state = 'open';

-- Questions and answers about an approval, in order. The key is made by the page, so that what is sent twice is kept once.
CREATE TABLE approval_word (
  approval TEXT NOT NULL REFERENCES approval (id),
  step INTEGER NOT NULL,
  key TEXT NOT NULL UNIQUE,
  at INTEGER NOT NULL,
  who TEXT NOT NULL CHECK (who IN ('owner', 'shop')),
  staff TEXT,
  text TEXT NOT NULL,
  PRIMARY KEY (approval, step)
) STRICT;
`;
