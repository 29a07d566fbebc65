/**
 * Where the public reaches the site: as configured (behind a proxy the request does not know), else as asked.
 * @example publicOrigin(request, "https://Service.example/") // "https://service.example"
 */
export function publicOrigin(request: Request, configured: string): string {
  const url = new URL(URL.canParse(configured) ? configured : request.url);
  return /^https?:$/.test(url.protocol) ? url.origin : new URL(request.url).origin;
}

export const isHttps = (origin: string): boolean => origin.startsWith("https:");
