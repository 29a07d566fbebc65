/**
 * What the nut and shim advice must know of a unit family's clutch. Plain numbers with their unit in the name, as the
 * shop measures and saves them; no library here: the browser's script reads this file too.
 */
export type ClutchData = {
  /** One spring washer: diameters, thickness and free height. */
  readonly springOuterMm: number;
  readonly springInnerMm: number;
  readonly springThicknessMm: number;
  readonly springFreeHeightMm: number;
  /** Spring washers lying in one another, and how many such packets face each other. */
  readonly springsNested: number;
  readonly springPackets: number;
  /** Share of the load lost to friction: for each layer between nested springs, and at the edges. */
  readonly layerFriction: number;
  readonly edgeFriction: number;
  /** The ring on which the friction washers rub: diameters, and how many faces slip. */
  readonly washerOuterMm: number;
  readonly washerInnerMm: number;
  readonly frictionFaces: number;
  /** Share of the way to flat that the stack may ever be pressed: the rest is the margin before it locks the gear. */
  readonly mostTravelShare: number;
  /** Where the stack's rate is less than this share of its first rate, it counts as flat and tells nothing. */
  readonly flatBelow: number;
  /** Standard deviation of one try's reading by itself, lbf·ft, beside the step of the tool. */
  readonly trySpreadLbfFt: number;
  /** Turns of the gear, slipping in the working direction and oiled as assembled, before a reading counts. */
  readonly settlingTurns: number;
};

/** Set-nut unit: the nut is stopped part-way. Its degrees count from where it first takes up the stack by hand. */
export type SetNutClutch = ClutchData & {
  readonly threadPitchMm: number;
  /** Standard deviation of finding that zero by hand. */
  readonly contactSpreadDegrees: number;
};

/** Shim-stack unit: the nut is tightened home, shims press the stack. */
export type ShimStackClutch = ClutchData & {
  /** Shims with which the stack is just taken up when the nut is home, and the standard deviation of that. */
  readonly contactShimsMm: number;
  readonly contactSpreadMm: number;
  /** Smallest difference between two shims on the shelf. */
  readonly shimStepMm: number;
};
