import { Hono } from "hono";
import { UNIT_FAMILIES, type UnitFamily } from "#shared/craft/vocabulary.ts";
import type { JobRise } from "#shared/job/record-view.ts";
import type { Estimate } from "#shared/measurement/estimate.ts";
import { OPTION_WORDS } from "#shared/messages/option-words.ts";
import { percentText } from "#shared/messages/record-words.ts";
import { RISE } from "#shared/messages/shop-record-words.ts";
import type { ShopSettings } from "#shared/shop/shop-settings.ts";
import { type LearntRise, learnRise } from "#shared/slip/lock-nut-rise.ts";
import { roundTo } from "#shared/units/round-to.ts";
import type { BenchNeeds } from "#src/bench/bench-needs.ts";
import { FactList } from "#src/bench/fact-list.tsx";
import type { StaffVariables } from "#src/bench/session.ts";
import { ShopPage } from "#src/bench/shop-page.tsx";

/** What the shop has learnt of how much its lock nuts raise the slip. */
export const riseRoutes = ({ shop }: BenchNeeds) =>
  new Hono<{ Variables: StaffVariables }>().get("/rise", async (c) => {
    const [{ settings }, ...seen] = await Promise.all([
      shop.settings(),
      ...UNIT_FAMILIES.map(async (family) => ({ family, rises: await shop.rises(family) })),
    ]);
    const { slip, clutch } = settings;
    return c.html(
      <ShopPage title={RISE.title} front={settings.front}>
        <p>{RISE.says}</p>
        <p>{RISE.prior(slip.lockNutRise, clutch.setNut.riseSd)}</p>
        <p class="faint">{RISE.confidence(percentText(slip.coverage))}</p>
        {seen
          .filter(({ family, rises }) => family === "set-nut" || rises.length > 0)
          .map(({ family, rises }) => (
            <FamilyRise family={family} learnt={learnt(rises, settings)} />
          ))}
      </ShopPage>,
    );
  });

function learnt(
  rises: readonly JobRise[],
  { slip: { lockNutRise, coverage }, clutch }: ShopSettings,
): LearntRise<JobRise> {
  const { riseSd, riseObservationSd } = clutch.setNut;
  return learnRise(rises, { mean: lockNutRise, riseSd, riseObservationSd }, coverage);
}

const FamilyRise = ({ family, learnt }: { readonly family: UnitFamily; readonly learnt: LearntRise<JobRise> }) => (
  <section>
    <h2>{OPTION_WORDS.unitFamily[family]}</h2>
    {learnt.doubtful && (
      <p class="problem" role="alert">
        {RISE.doubtful}
      </p>
    )}
    <FactList
      facts={[
        [RISE.learnt, estimateText(learnt.mean)],
        [RISE.next, estimateText(learnt.next)],
        [RISE.counted, learnt.counted],
        [RISE.outliers, outliersText(learnt.outliers)],
      ]}
    />
  </section>
);

const estimateText = ({ value, low, high }: Estimate): string =>
  `${shown(value)}, ${RISE.interval(shown(low), shown(high))}`;

const outliersText = (outliers: readonly JobRise[]): string =>
  outliers.length === 0
    ? RISE.none
    : outliers.map(({ job, before, after }) => RISE.outlier(job, shown(after - before))).join(", ");

const shown = (lbfFt: number): string => roundTo(lbfFt, 2).toFixed(2);
