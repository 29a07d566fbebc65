import { Hono } from "hono";
import { approvalRoutes } from "#src/owner/approval-routes.tsx";
import { checkRoutes } from "#src/owner/check-routes.tsx";
import { confirmRoutes } from "#src/owner/confirm-routes.tsx";
import { conversationRoutes } from "#src/owner/conversation-routes.tsx";
import type { OwnerNeeds } from "#src/owner/owner-needs.ts";
import { photoRoutes } from "#src/owner/photo-routes.ts";
import { recordRoutes } from "#src/owner/record-routes.tsx";
import { resumeRoutes } from "#src/owner/resume-routes.tsx";
import { tagRoutes } from "#src/owner/tag-routes.tsx";
import { verdictRoutes } from "#src/owner/verdict-routes.tsx";

/** All pages of an owner, from the first question to the job tag. */
export const ownerRoutes = (needs: OwnerNeeds) =>
  new Hono()
    .route("/", conversationRoutes(needs))
    .route("/", resumeRoutes(needs))
    .route("/", verdictRoutes(needs))
    .route("/", confirmRoutes(needs))
    .route("/", photoRoutes(needs))
    .route("/", tagRoutes(needs))
    .route("/", approvalRoutes(needs))
    .route("/", recordRoutes(needs))
    .route("/", checkRoutes(needs));
