import { JOB_STATES, OVER } from "#shared/shop/job-state.ts";

const listed = (words: readonly string[]) => words.map((word) => `'${word}'`).join(", ");

/** A job goes on after its booking, and its history names the person, what was said, and how to take a move back. */
export const JOB_LIFE_TABLES = `
ALTER TABLE job RENAME COLUMN state TO state_before;
ALTER TABLE job ADD COLUMN state TEXT NOT NULL DEFAULT 'booked' CHECK (state IN (${listed(JOB_STATES)}));
UPDATE job SET state = state_before;
ALTER TABLE job DROP COLUMN state_before;
-- Few jobs are open at a time, however many are over: one short index finds them.
CREATE INDEX open_job ON job (state) WHERE state NOT IN (${listed(OVER)});

-- Who of the staff booked it, by name as it was then; NULL = the owner did.
ALTER TABLE job ADD COLUMN booked_staff TEXT;

-- Bench time that is kept ends here; NULL = all of it is. What a job that left the bench early needs no more is free.
ALTER TABLE booking ADD COLUMN freed_from INTEGER;
UPDATE booking SET freed_from = from_quantum WHERE job IN (SELECT serial FROM job WHERE state = 'cancelled');

ALTER TABLE job_event ADD COLUMN staff TEXT;
ALTER TABLE job_event ADD COLUMN note TEXT;
-- For a move: the state it left, so that the newest can be taken back; NULL for what changed no state.
ALTER TABLE job_event ADD COLUMN from_state TEXT;
`;
