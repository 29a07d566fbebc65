/** Where the public reaches the site: as configured (behind a proxy the request does not know), else as asked. */
export const publicOrigin = (request: Request, configured: string): string =>
  configured === "" ? new URL(request.url).origin : configured;

export const isHttps = (origin: string): boolean => origin.startsWith("https:");
