import { type Context, Hono } from "hono";
import { SHEET_WORKER } from "#build/assets.ts";
import { accept, type Outcome, refuse } from "#shared/basics/outcome.ts";
import type { SheetEntry, SheetStepId } from "#shared/job/sheet-entry.ts";
import { type FormFields, readEntry, SKIP } from "#shared/job/sheet-fields.ts";
import { ENTRY_SCHEMAS, EntryStampSchema, sheetStepIn } from "#shared/job/sheet-schema.ts";
import { stepKind } from "#shared/job/sheet-steps.ts";
import { entryRefusedText } from "#shared/messages/sheet-refused-words.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import type { JobEnv } from "#src/bench/job-env.tsx";
import type { StaffVariables } from "#src/bench/session.ts";
import { ClashPage } from "#src/bench/sheet/clash-page.tsx";
import { type SheetModel, sheetModel } from "#src/bench/sheet/sheet-model.ts";
import { SheetPage } from "#src/bench/sheet/sheet-page.tsx";
import type { StepForm } from "#src/bench/sheet/step-field.tsx";
import { fieldErrors } from "#src/http/check-input.ts";
import { type FieldError, problem } from "#src/http/problem.ts";
import { readFields } from "#src/http/read-form.ts";

type SheetEnv = { Variables: JobEnv["Variables"] & StaffVariables };
type SheetContext = Context<SheetEnv>;

/** The bench sheet of a job: all steps on one page, one form each. The script sends the same forms and reads JSON. */
export function sheetRoutes(needs: BenchNeeds) {
  const PATH = "/:number/sheet";
  return (
    new Hono<SheetEnv>()
      .get(PATH, async (c) => {
        const model = await modelFor(c, needs, sheetStepIn(c.req.query("step") ?? ""));
        return c.html(<SheetPage model={model} done={sheetStepIn(c.req.query("done") ?? "")} />);
      })
      // Served below the page that it is for; the header lets it reach the page itself, and nothing else.
      .get(`${PATH}/offline.js`, (c) =>
        c.body(SHEET_WORKER.body, 200, {
          "content-type": "text/javascript; charset=utf-8",
          "service-worker-allowed": sheetOf(c),
        }),
      )
      .post(`${PATH}/:step`, async (c) => {
        const step = sheetStepIn(c.req.param("step"));
        if (step === null) return c.notFound();
        const fields = await readFields(c);
        const wish = readWish(step, fields);
        if (!wish.ok) return notAccepted(c, needs, { step, fields, problems: wish.refusal });
        const { number } = c.var.job;
        const kept = await needs.shop.keepEntry({ number, step, ...wish.value, staff: c.var.staff.name });
        if (kept.ok)
          return wantsJson(c) ? c.json({ stored: kept.value }) : c.redirect(`${sheetOf(c)}?done=${step}#now`, 303);
        const says = entryRefusedText(kept.refusal);
        if (wantsJson(c))
          return problem({ status: 409, detail: says, reason: kept.refusal.reason, more: kept.refusal });
        if (kept.refusal.reason === "written-meanwhile") {
          const { job, front } = c.var;
          const mine = { entry: wish.value.entry, fields: withoutStamp(fields), key: needs.newId() };
          return c.html(<ClashPage job={job} front={front} mine={mine} theirs={kept.refusal.newer} />, 409);
        }
        const model = await modelFor(c, needs, step);
        return c.html(<SheetPage model={model} refused={{ step, fields, problems: {} }} problem={says} />, 409);
      })
  );
}

const sheetOf = (c: SheetContext): string => `/shop/jobs/${c.var.job.number}/sheet`;

/** The job is read anew: what was just tried may have found it changed. */
async function modelFor(c: SheetContext, needs: BenchNeeds, step: SheetStepId | null): Promise<SheetModel> {
  const { number } = c.var.job;
  const [job, view, { settings }, photos] = await Promise.all([
    needs.shop.job(number),
    needs.shop.sheet(number),
    needs.shop.settings(),
    needs.photoStore === null ? null : needs.shop.photos(number),
  ]);
  if (job === null || view === null) throw new Error("A job vanished while its sheet was read");
  const { name: staff } = c.var.staff;
  return sheetModel({ job, view, settings, photos, staff, step, newKey: needs.newId, asked: c.req.queries() });
}

type Wish = { readonly entry: SheetEntry; readonly after: number; readonly key: string; readonly by: string | null };
type Problems = Readonly<Record<string, string>>;

function readWish(step: SheetStepId, fields: FormFields): Outcome<Wish, Problems> {
  const typed = readEntry(stepKind(step), fields);
  const schema = ENTRY_SCHEMAS[typed.kind];
  const stampTyped = { after: Number(fields["after"]?.[0]), key: fields["key"]?.[0], by: fields["by"]?.[0] ?? null };
  const [entry, stamp] = [schema.safeParse(typed), EntryStampSchema.safeParse(stampTyped)];
  if (entry.success && stamp.success) return accept({ entry: entry.data, ...stamp.data });
  return refuse({
    ...(entry.success ? {} : asProblems(fieldErrors(entry.error.issues, schema, typed), typed.kind)),
    ...(stamp.success ? {} : asProblems(fieldErrors(stamp.error.issues, EntryStampSchema, stampTyped))),
  });
}

/** By the form's own names: `tries.1.slip` is the second of the fields `tries.slip`. */
const asProblems = (errors: readonly FieldError[], kind?: SheetEntry["kind"]): Problems =>
  Object.fromEntries(errors.map(({ field, accepted }) => [formName(field, kind), accepted]));

function formName(field: string, kind: SheetEntry["kind"] | undefined): string {
  if (kind === "skipped") return SKIP.why;
  if (field === "tries") return "tries.slip";
  return field.replace(/^tries\.(\d+)\.(\w+)$/, "tries.$2.$1").replace(/^(readings|tries\.\w+)\.0$/, "$1");
}

async function notAccepted(c: SheetContext, needs: BenchNeeds, refused: StepForm): Promise<Response> {
  const errors = Object.entries(refused.problems).map(([field, accepted]) => ({ field, accepted }));
  if (wantsJson(c)) return problem({ status: 422, detail: NOT_ACCEPTED, reason: "not-accepted", errors });
  const model = await modelFor(c, needs, refused.step);
  return c.html(<SheetPage model={model} refused={refused} />, 422);
}

const NOT_ACCEPTED = "Some fields are not accepted; each is named with what would be.";

const withoutStamp = ({ after: _, key: __, by: ___, ...fields }: FormFields): FormFields => fields;

const wantsJson = (c: SheetContext): boolean => c.req.header("accept")?.includes("application/json") === true;
