// Arrows point one way: entry points -> adapters -> features -> src/http -> shared.
const ENTRY_POINT = "^src/[^/]+[.]tsx?$";
const FEATURE = "^src/(owner|bench|api|ledger|reminders)/";

/** A folder of shared/ may use the folders before it, never one after it. */
const SHARED_ORDER = [
  "basics",
  "units",
  "measurement",
  "craft",
  "life",
  "slip",
  "triage",
  "intake",
  "calendar",
  "shop",
  "job",
  "messages",
];

/** The one browser script that may use a library: the reader of QR codes, for browsers that have none. */
const READS_CODES = "^src/in-browser/scan[.]ts$";

const never = (name, from, to) => ({ name, severity: "error", from, to });

const sharedOrderRules = SHARED_ORDER.slice(0, -1).map((folder, index) =>
  never(
    `${folder}-uses-only-earlier-folders`,
    { path: `^shared/${folder}/` },
    { path: `^shared/(${SHARED_ORDER.slice(index + 1).join("|")})/` },
  ),
);

module.exports = {
  forbidden: [
    ...sharedOrderRules,
    never(
      "shared-folders-are-in-the-order",
      {},
      { path: "^shared/[^/]+/", pathNot: `^shared/(${SHARED_ORDER.join("|")})/` },
    ),
    never(
      "shared-stands-alone",
      { path: "^shared/" },
      { pathNot: "^(shared/|node_modules/(zod|temporal-polyfill|@noble/hashes)/)" },
    ),
    never(
      "browser-code-uses-only-shared",
      { path: "^src/in-browser/", pathNot: READS_CODES },
      { pathNot: "^(shared/|src/in-browser/)" },
    ),
    never(
      "only-the-scanner-reads-codes",
      { path: READS_CODES },
      { pathNot: "^(shared/|src/in-browser/|node_modules/qr/)" },
    ),
    never(
      "browser-code-never-reaches-a-library",
      { path: "^src/in-browser/", pathNot: READS_CODES },
      { path: "^node_modules/", reachable: true },
    ),
    never("local-code-does-not-reach-into-the-worker", { path: "^src/local/" }, { path: "^src/(?!local/|http/)" }),
    never(
      "only-local-code-runs-on-node",
      { path: "^(shared|src)/", pathNot: "^src/local/" },
      { dependencyTypes: ["core"] },
    ),
    never("nothing-imports-local-code", { path: "^(shared|src)/", pathNot: "^src/local/" }, { path: "^src/local/" }),
    never("only-entry-points-know-adapters", { path: "^src/(?!adapters/)[^/]+/" }, { path: "^src/adapters/" }),
    never("features-meet-only-in-entry-points", { path: FEATURE }, { path: FEATURE, pathNot: "^src/$1/" }),
    never("plumbing-knows-no-feature", { path: "^src/http/" }, { path: "^src/(?!http/)" }),
    never("nothing-imports-an-entry-point", { path: "^(src/.+/|shared/)" }, { path: ENTRY_POINT }),
    never("tests-are-not-imported", { path: "^(src|shared)/" }, { path: "^tests/" }),
    never(
      "every-file-is-reached",
      { path: `${ENTRY_POINT}|^src/in-browser/|^src/local/(start|sign-in)[.]ts$` },
      {
        path: "^(src|shared)/.+/",
        pathNot: "^src/in-browser/|^src/local/(start|sign-in)[.]ts$|[.]mjs$|[.]css$",
        reachable: false,
      },
    ),
    never("everything-resolves", {}, { couldNotResolve: true, pathNot: "^cloudflare:" }),
    never("no-cycles", {}, { circular: true }),
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "env[.]d[.]ts$|^[.]build/" },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "types", "default"] },
  },
};
