import type { ClutchData } from "#shared/slip/clutch-data.ts";
import type { FrictionFaces } from "#shared/slip/friction-faces.ts";
import type { SpringStack } from "#shared/slip/spring-stack.ts";

/** The spring stack that a unit family's figures describe. @example springsOf(CLUTCH_DEFAULTS.setNut).packets // 2 */
export const springsOf = (it: ClutchData): SpringStack => ({
  disc: {
    outerMm: it.springOuterMm,
    innerMm: it.springInnerMm,
    thicknessMm: it.springThicknessMm,
    freeHeightMm: it.springFreeHeightMm,
  },
  nested: it.springsNested,
  packets: it.springPackets,
  layerFriction: it.layerFriction,
  edgeFriction: it.edgeFriction,
});

/** The friction ring that they describe. @example facesOf(CLUTCH_DEFAULTS.setNut) // radii 24 and 15 mm, 2 faces */
export const facesOf = (it: ClutchData): FrictionFaces => ({
  outerRadiusMm: it.washerOuterMm / 2,
  innerRadiusMm: it.washerInnerMm / 2,
  faces: it.frictionFaces,
});
