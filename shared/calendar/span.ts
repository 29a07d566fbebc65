import type { Quantum } from "#shared/calendar/quantum.ts";

/** A stretch of exact time, half-open: the quantum `to` is no longer in it. */
export type Span = { readonly from: Quantum; readonly to: Quantum };

/** 9:00 to 10:00 and 10:00 to 11:00 touch without a clash. */
export const overlaps = (one: Span, other: Span): boolean => one.from < other.to && other.from < one.to;

/** Does the outer span hold all of the inner one? */
export const contains = (outer: Span, inner: Span): boolean => outer.from <= inner.from && inner.to <= outer.to;
