import { type Shelf, shelfKey } from "#shared/shop/shelf.ts";

/** Where a shelf's own page is. */
export const shelfPath = (shelf: Shelf): string => `/shop/parts/${shelfKey(shelf)}`;
