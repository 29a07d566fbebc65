/** Engine hours that may have passed: one figure where all is known, a range where it is not. `most` may be Infinity. */
export type HoursSpan = { readonly least: number; readonly most: number };

/** @example exactly(40) // { least: 40, most: 40 } */
export const exactly = (hours: number): HoursSpan => ({ least: hours, most: hours });

/** @example upTo(150) // { least: 0, most: 150 } */
export const upTo = (hours: number): HoursSpan => ({ least: 0, most: hours });

/** The hours since whichever came last, where it is not known which did. */
export const sinceTheLast = (one: HoursSpan, other: HoursSpan): HoursSpan => ({
  least: Math.min(one.least, other.least),
  most: Math.min(one.most, other.most),
});

/** A millionth of an hour: finer than any meter, coarse enough that 160.7 - 60.7 is 100 and not 99.99999999999999. */
const PER_HOUR = 1e6;

/** Hours from one reading of the meter to a later one; never negative. @example hoursBetween(60.7, 160.7) // 100 */
export const hoursBetween = (from: number, to: number): number =>
  Math.max(0, Math.round((to - from) * PER_HOUR) / PER_HOUR);
