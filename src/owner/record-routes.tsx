import { Hono } from "hono";
import { recordThatCounts } from "#shared/job/record-standing.ts";
import { RECORD } from "#shared/messages/record-words.ts";
import { sha256Hex } from "#src/http/owner-link.ts";
import { PageFrame } from "#src/http/page-frame.tsx";
import { RecordView } from "#src/http/record/record-view.tsx";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";

/** The owner's service record, opened by the job's link alone. */
export const recordRoutes = (needs: OwnerNeeds) =>
  new Hono().get("/tag/:token/record", async (c) => {
    c.header("cache-control", "no-store");
    const token = c.req.param("token");
    const view = await needs.shop.recordByLink(await sha256Hex(token));
    if (view === null) return c.notFound();
    const { front } = (await needs.shop.settings()).settings;
    const sealed = recordThatCounts(view.entries);
    return c.html(
      <PageFrame title={RECORD.title} front={front} kind="owner">
        <main id="main">
          {sealed === null ? (
            <div class="sheet">
              <h1 tabindex={-1}>{RECORD.title}</h1>
              <p>{view.entries.length === 0 ? RECORD.none : RECORD.takenBack}</p>
            </div>
          ) : (
            <RecordView
              sealed={sealed}
              services={view.services}
              locale={front.locale}
              origin={needs.origin(c.req.raw)}
            />
          )}
          <p class="actions">
            {sealed !== null && (
              <button type="button" data-print hidden>
                {RECORD.print}
              </button>
            )}
            <a class="button quiet" href={`/tag/${token}`}>
              {RECORD.backToTag}
            </a>
          </p>
        </main>
      </PageFrame>,
    );
  });
