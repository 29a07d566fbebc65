import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";
import { type PlainHours, plainHours } from "#tests/support/plain-hours.ts";

type Verdict = "not-due" | "slip-check" | "full-rebuild" | "stop-riding";
type Reason = { rule: string; text: string; source: string };

export type PlainJudgement = {
  verdict: Verdict;
  reasons: Reason[];
  advice: Reason[];
  engineDebris: "unlikely" | "possible" | "likely";
  due: { kind: "slip-check" | "full-rebuild"; by: string | null; atEngineHours: number | null };
};

const practice = "common practice, no published source";
const ours = "default of this project";

/** Too little to be an hour, enough to be the rounding of a float: 160.7 - 60.7 is short of 100. */
const NEARLY = 1e-7;

/** Half a second, in days: clocks this near to each other run out together. */
const SAME_MOMENT = 5e-6;

/**
 * Triage a second time, on purpose without rules, tables or any code of the first: what one would write by hand, one
 * `if` after the other, with the project's default numbers. The tests compare the two; the benchmark races them.
 */
export function plainTriage(answers: Answers, onDate: string): PlainJudgement {
  const { symptoms, mods, riding, lastRebuild } = answers;
  const metal = symptoms.includes("metal-in-oil");
  const grinding = symptoms.includes("grinding");
  const sudden = symptoms.includes("sudden-boost-loss");
  const gradual = symptoms.includes("gradual-boost-loss");
  const wobble = symptoms.includes("impeller-wobble");
  const whine = symptoms.includes("whine");
  const burnt = symptoms.includes("burnt-smell");
  const limp = symptoms.includes("limp-mode");
  const oil = symptoms.includes("oil-in-intake");
  const ceramic = maybeCeramic(answers);
  const hours = plainHours(answers, onDate);
  const rebuildBy = twoYearsAfter(lastRebuild, answers.builtYear);
  let interval = riding === "easy" ? 100 : riding === "mixed" ? 75 : 50;
  if (mods.engine !== false && interval > 50) interval = 50;
  if (mods.charger !== false) interval = 30;

  const reasons: Reason[] = [];
  if (metal) reasons.push({ rule: "metal-in-oil", text: "Metal in the oil: a part breaks up.", source: practice });
  if (grinding) reasons.push({ rule: "grinding", text: "Grinding: a bearing or a tooth.", source: practice });
  if (sudden)
    reasons.push({ rule: "sudden-boost-loss", text: "Boost gone at once: gear or washer.", source: practice });
  if (wobble) reasons.push({ rule: "impeller-wobble", text: "The impeller wobbles: ball bearing.", source: practice });
  if (ceramic && symptoms.length > 0)
    reasons.push({ rule: "ceramic-with-symptom", text: "Ceramic, or maybe, and not well.", source: practice });
  if (limp && gradual)
    reasons.push({ rule: "limp-with-fading-boost", text: "Limp mode and fading boost.", source: ours });
  const stops = reasons.length;

  if (ceramic && symptoms.length === 0)
    reasons.push({ rule: "ceramic-washers", text: "Ceramic, or maybe: replace soon.", source: practice });
  if (rebuildBy === null)
    reasons.push({ rule: "rebuild-months", text: "Age unknown: taken as over 24 months.", source: practice });
  else if (onDate >= rebuildBy)
    reasons.push({ rule: "rebuild-months", text: `24 months were up on ${rebuildBy}.`, source: practice });
  if (hours.rebuildMost >= 200 - NEARLY)
    reasons.push({ rule: "rebuild-hours", text: `${ran(hours.rebuildMost)} since rebuilt or new.`, source: ours });
  if (whine) reasons.push({ rule: "whine", text: "A new whine: bearings or gear.", source: ours });
  if (oil) reasons.push({ rule: "oil-in-intake", text: "Oil in the intake: seal or bearing.", source: ours });
  if (burnt) reasons.push({ rule: "burnt-smell", text: "A burnt smell: the clutch runs hot.", source: ours });
  const fresh = hours.slipLeast < 25 - NEARLY;
  if (gradual && fresh) reasons.push({ rule: "slip-will-not-hold", text: "Freshly set, and fading.", source: ours });
  const rebuilds = reasons.length;

  if (hours.slipMost >= interval - NEARLY)
    reasons.push({
      rule: "slip-hours",
      text: `${ran(hours.slipMost)} since set, of ${interval} h.`,
      source: interval === 100 ? practice : ours,
    });
  if (mods.changedSinceSlip !== false)
    reasons.push({ rule: "changed-since-slip", text: "Changed since the slip was set, or maybe.", source: ours });
  if (gradual && !fresh) reasons.push({ rule: "fading-boost", text: "Boost fades: worn, slip low.", source: practice });
  if (limp && !gradual) reasons.push({ rule: "limp-mode", text: "Limp mode: perhaps the charger.", source: ours });

  let verdict: Verdict = "not-due";
  if (reasons.length > 0) verdict = "slip-check";
  if (rebuilds > 0) verdict = "full-rebuild";
  if (stops > 0) verdict = "stop-riding";
  if (reasons.length === 0) reasons.push({ rule: "nothing-due", text: "Nothing asks for service.", source: ours });

  const advice: Reason[] = [];
  if (whine || burnt || oil)
    advice.push({ rule: "do-not-ride-until-seen", text: "Do not ride until it was seen.", source: ours });
  if (limp) advice.push({ rule: "read-the-engine-fault-first", text: "Have the fault read first.", source: ours });
  if (answers.notLooked) advice.push({ rule: "look-at-the-oil", text: "Look at the oil first.", source: ours });

  let engineDebris: PlainJudgement["engineDebris"] = "possible";
  if (stops === 0 || (wobble && symptoms.every((it) => it === "impeller-wobble"))) engineDebris = "unlikely";
  if (stops > 0 && (metal || (sudden && grinding) || (ceramic && (gradual || sudden)))) engineDebris = "likely";

  return { verdict, reasons, advice, engineDebris, due: due(hours, interval, rebuildBy, onDate) };
}

function maybeCeramic({ washers, unitFamily, builtYear, lastRebuild }: Answers): boolean {
  if (washers === "ceramic") return true;
  if (washers === "metal") return false;
  if (unitFamily === "set-nut") return false;
  if (builtYear !== null && builtYear > 2010) return false;
  return lastRebuild.when !== "known";
}

/** The end of February where the year has no 29th. */
function twoYearsAfter(rebuild: RememberedService, builtYear: number | null): string | null {
  if (rebuild.when === "known" && rebuild.date !== null) {
    const monthAndDay = rebuild.date.slice(4);
    return `${Number(rebuild.date.slice(0, 4)) + 2}${monthAndDay === "-02-29" ? "-02-28" : monthAndDay}`;
  }
  return builtYear === null ? null : `${builtYear + 2}-01-01`;
}

const ran = (hours: number): string => (hours === Infinity ? "Nobody knows how long" : `${Math.floor(hours)} h`);

/** The earliest of all clocks; hours are ranked against dates at 150 h a year. */
function due(hours: PlainHours, interval: number, rebuildBy: string | null, onDate: string): PlainJudgement["due"] {
  const monthsLeft = rebuildBy === null ? -Infinity : (Date.parse(rebuildBy) - Date.parse(onDate)) / 86_400_000;
  const rebuildLeft = Math.min(monthsLeft, ((200 - hours.rebuildMost) / 150) * 365.25);
  const slipLeft = ((interval - hours.slipMost) / 150) * 365.25;
  let atEngineHours: number | null = null;
  if (hours.rebuiltAt !== null) atEngineHours = hours.rebuiltAt + 200;
  if (hours.slipSetAt !== null && (atEngineHours === null || hours.slipSetAt + interval < atEngineHours))
    atEngineHours = hours.slipSetAt + interval;
  return { kind: slipLeft < rebuildLeft - SAME_MOMENT ? "slip-check" : "full-rebuild", by: rebuildBy, atEngineHours };
}
