/** What is said where a request is turned away before any page or program of ours sees it. */
export const ERROR_WORDS = {
  noKey: {
    title: "Not set up yet",
    detail: (fewest: number): string =>
      `This server cannot sign links: its LINK_KEY is missing or has fewer than ${fewest} characters.`,
  },
  tooMany: { title: "One moment, please", detail: "Too many requests. Wait a minute, then go on." },
  crossSite: { title: "Not accepted", detail: "This was sent from another site, so it was not accepted." },
  tooLarge: { title: "Too much at once", detail: "That is more than 64 KiB, which is all that is accepted." },
  photoTooLarge: {
    title: "The photo is too large",
    detail: "A photo may have 15 MB at most: choose a smaller one, or have the camera make smaller ones.",
  },
  wrongMethod: { title: "Not accepted", detail: "This address does not answer that method." },
  notFound: { title: "Nothing here", detail: "There is nothing at this address." },
  failed: { title: "Something went wrong", detail: "Something went wrong here. Please try again." },
  back: "Back to the start",
} as const;
