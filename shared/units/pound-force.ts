/**
 * The exact definitions that pound-based units rest on: NIST Special Publication 811 (2008), Appendix B.
 * Factors are built from these, never typed in rounded.
 */
const POUND_KG = 0.45359237;
const STANDARD_GRAVITY_M_PER_S2 = 9.80665;

/** One pound-force in newtons. */
export const POUND_FORCE_N = POUND_KG * STANDARD_GRAVITY_M_PER_S2;

/** One inch in metres. */
export const INCH_M = 0.0254;
