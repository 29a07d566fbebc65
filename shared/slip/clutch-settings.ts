import * as z from "zod";
import { DEFAULT, type Source } from "#shared/basics/source.ts";
import type { SetNutClutch, ShimStackClutch } from "#shared/slip/clutch-data.ts";
import type { RiseSpreads } from "#shared/slip/lock-nut-rise.ts";

const millimetres = (min: number, max: number) => z.number().min(min).max(max).multipleOf(0.001);
const count = (max: number) => z.number().int().min(1).max(max);
const share = (min: number, max: number) => z.number().min(min).max(max);

const clutch = {
  springOuterMm: millimetres(5, 250),
  springInnerMm: millimetres(2, 200),
  springThicknessMm: millimetres(0.2, 6),
  springFreeHeightMm: millimetres(0.3, 20),
  springsNested: count(8),
  springPackets: count(20),
  layerFriction: share(0, 0.05),
  edgeFriction: share(0, 0.1),
  washerOuterMm: millimetres(5, 250),
  washerInnerMm: millimetres(2, 249),
  frictionFaces: count(20),
  mostTravelShare: share(0.3, 0.97),
  flatBelow: share(0.01, 0.5),
  trySpreadLbfFt: z.number().min(0.01).max(2),
  settlingTurns: z.number().int().min(0).max(50),
};

const SetNutSchema = z
  .strictObject({
    ...clutch,
    threadPitchMm: millimetres(0.2, 5),
    contactSpreadDegrees: z.number().min(1).max(360),
    riseSd: z.number().min(0.01).max(2),
    riseObservationSd: z.number().min(0.01).max(2),
  })
  .superRefine(refuseImpossible) satisfies z.ZodType<SetNutClutch & RiseSpreads>;

const ShimStackSchema = z
  .strictObject({
    ...clutch,
    contactShimsMm: millimetres(0, 20),
    contactSpreadMm: millimetres(0.001, 5),
    shimStepMm: millimetres(0.005, 1),
  })
  .superRefine(refuseImpossible) satisfies z.ZodType<ShimStackClutch>;

/** Clutch data of each unit family. The shop measures its own units and edits these, never a formula. */
export const ClutchSettingsSchema = z.strictObject({ setNut: SetNutSchema, shimStack: ShimStackSchema });
export type ClutchSettings = Readonly<z.infer<typeof ClutchSettingsSchema>>;

function refuseImpossible(it: z.infer<z.ZodObject<typeof clutch>>, context: z.core.$RefinementCtx): void {
  const refuse = (field: keyof typeof clutch, message: string) =>
    context.addIssue({ code: "custom", path: [field], message });
  if (it.springInnerMm >= it.springOuterMm) refuse("springInnerMm", "less than springOuterMm");
  if (it.washerInnerMm >= it.washerOuterMm) refuse("washerInnerMm", "less than washerOuterMm");
  if (it.springFreeHeightMm <= it.springThicknessMm) refuse("springFreeHeightMm", "more than springThicknessMm");
}

/** A stack of ordinary disc springs that lands in the slip that the trade sets. Measure your own unit. */
const SAME_CLUTCH = {
  springOuterMm: 28,
  springInnerMm: 14.2,
  springThicknessMm: 1.5,
  springFreeHeightMm: 2.15,
  springsNested: 2,
  springPackets: 2,
  layerFriction: 0.02,
  edgeFriction: 0.04,
  washerOuterMm: 48,
  washerInnerMm: 30,
  frictionFaces: 2,
  mostTravelShare: 0.9,
  flatBelow: 0.1,
  trySpreadLbfFt: 0.1,
  settlingTurns: 3,
} as const;

export const CLUTCH_DEFAULTS: ClutchSettings = {
  setNut: { ...SAME_CLUTCH, threadPitchMm: 1, contactSpreadDegrees: 15, riseSd: 0.3, riseObservationSd: 0.3 },
  shimStack: { ...SAME_CLUTCH, contactShimsMm: 0.5, contactSpreadMm: 0.2, shimStepMm: 0.05 },
};

type Note = { readonly text: string; readonly source: Source };
const ours = (text: string): Note => ({ text: `${text}; measure your own unit`, source: DEFAULT });

const SAME_NOTES: Readonly<Record<keyof typeof clutch, Note>> = {
  springOuterMm: ours("Spring washer, outer diameter, mm"),
  springInnerMm: ours("Spring washer, inner diameter, mm"),
  springThicknessMm: ours("Spring washer, thickness, mm"),
  springFreeHeightMm: ours("Spring washer, height when free, mm"),
  springsNested: ours("Spring washers lying in one another"),
  springPackets: ours("Packets of spring washers that face each other"),
  layerFriction: ours("Share of the load lost to friction at each layer between nested spring washers"),
  edgeFriction: ours("Share of the load lost to friction at the edges of the spring washers"),
  washerOuterMm: ours("Friction ring, outer diameter, mm"),
  washerInnerMm: ours("Friction ring, inner diameter, mm"),
  frictionFaces: ours("Friction faces that slip"),
  mostTravelShare: ours("How far the springs may ever be pressed, as a share of the way to flat"),
  flatBelow: ours("Share of the springs' first rate under which they count as flat"),
  trySpreadLbfFt: ours("Spread of one reading while the slip is being set, standard deviation, lbf·ft"),
  settlingTurns: ours("Turns of the gear, slipping, before a reading counts"),
};

/** What each number means and where its default comes from, for the shop's settings page. */
export const CLUTCH_SETTING_NOTES: {
  readonly [Family in keyof ClutchSettings]: Readonly<Record<keyof ClutchSettings[Family], Note>>;
} = {
  setNut: {
    ...SAME_NOTES,
    threadPitchMm: ours("Thread pitch of the set nut, mm a turn"),
    contactSpreadDegrees: ours("Spread of finding by hand where the nut takes up the springs, degrees"),
    riseSd: ours("How far the lock nut's rise may lie from the slip settings' figure before any is seen, lbf·ft"),
    riseObservationSd: ours("Spread of the lock nut's rise from one unit to the next, lbf·ft"),
  },
  shimStack: {
    ...SAME_NOTES,
    contactShimsMm: ours("Shims with which the springs are just taken up when the nut is home, mm"),
    contactSpreadMm: ours("Spread of that from one unit to the next, mm"),
    shimStepMm: ours("Smallest difference between two shims on the shelf, mm"),
  },
};
