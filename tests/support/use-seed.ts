import * as fc from "fast-check";
import { inject } from "vitest";

declare module "vitest" {
  interface ProvidedContext {
    readonly seed: number;
  }
}

fc.configureGlobal({ seed: inject("seed") });
