import type { Answers, RememberedService } from "#shared/craft/vocabulary.ts";

export type PlainHours = {
  rebuildLeast: number;
  rebuildMost: number;
  slipLeast: number;
  slipMost: number;
  rebuiltAt: number | null;
  slipSetAt: number | null;
};

const ridden = (from: string, onDate: string): number =>
  Math.max(0, ((Date.parse(onDate) - Date.parse(from)) / 86_400_000 / 365.25) * 150);

/** The hours since rebuild and slip setting, least and most, case by case. */
export function plainHours(answers: Answers, onDate: string): PlainHours {
  const { engineHours, builtYear, lastRebuild: rebuild, lastSlipSet: slip } = answers;

  // The hours now.
  let nowLeast = engineHours ?? 0;
  let nowMost = engineHours ?? Infinity;
  if (engineHours === null) {
    let from: string | null = null;
    let then = 0;
    if (isFull(rebuild)) {
      from = rebuild.date;
      then = rebuild.engineHours;
    }
    if (isFull(slip) && (from === null || slip.date >= from)) {
      from = slip.date;
      then = slip.engineHours;
    }
    if (from === null && builtYear !== null) from = `${builtYear}-01-01`;
    if (rebuild.engineHours !== null && rebuild.engineHours > nowLeast) nowLeast = rebuild.engineHours;
    if (slip.engineHours !== null && slip.engineHours > nowLeast) nowLeast = slip.engineHours;
    if (from !== null) nowMost = then + ridden(from, onDate);
    if (from !== null && nowMost < nowLeast) nowMost = nowLeast + ridden(from, onDate);
  }

  // Since the rebuild, and since the slip setting taken alone.
  let rebuildLeast = 0;
  let rebuildMost = nowMost;
  if (rebuild.when === "never") rebuildLeast = nowLeast;
  else if (rebuild.engineHours !== null) {
    rebuildLeast = Math.max(0, nowLeast - rebuild.engineHours);
    rebuildMost = Math.max(0, nowMost - rebuild.engineHours);
  } else if (rebuild.date !== null) rebuildMost = Math.min(ridden(rebuild.date, onDate), nowMost);
  let slipLeast = 0;
  let slipMost = nowMost;
  if (slip.engineHours !== null) {
    slipLeast = Math.max(0, nowLeast - slip.engineHours);
    slipMost = Math.max(0, nowMost - slip.engineHours);
  } else if (slip.date !== null) slipMost = Math.min(ridden(slip.date, onDate), nowMost);

  // Where both were done, or may have been, the later counts for the slip.
  let rebuiltAt = rebuild.when === "known" ? rebuild.engineHours : 0;
  let slipSetAt = rebuiltAt;
  const bothDated = rebuild.date !== null && slip.date !== null && rebuild.date !== slip.date;
  if (slip.when === "never" || (bothDated && rebuild.date > slip.date)) {
    if (rebuildMost > slipMost) rebuildMost = Math.max(rebuildLeast, slipMost);
    slipLeast = rebuildLeast;
    slipMost = rebuildMost;
  } else {
    if (slip.when === "known" && (rebuild.when === "never" || bothDated)) {
      if (rebuildLeast < slipLeast) rebuildLeast = slipLeast;
      if (rebuildMost < slipLeast) rebuildMost = slipLeast;
    } else if (rebuildLeast < slipLeast) slipLeast = rebuildLeast;
    if (rebuildMost < slipMost) slipMost = rebuildMost;
    if (slip.engineHours !== null && (slipSetAt === null || slip.engineHours > slipSetAt)) slipSetAt = slip.engineHours;
  }
  if (engineHours !== null) {
    rebuiltAt = engineHours - rebuildMost;
    slipSetAt = engineHours - slipMost;
  }
  return { rebuildLeast, rebuildMost, slipLeast, slipMost, rebuiltAt, slipSetAt };
}

const isFull = (service: RememberedService): service is RememberedService & { date: string; engineHours: number } =>
  service.date !== null && service.engineHours !== null;
