/** The token of an `Authorization: Bearer …` header (RFC 6750 section 2.1), or `null`. */
export function bearerToken(request: Request): string | null {
  const [, token] = /^Bearer +([A-Za-z0-9._~+/-]+=*) *$/i.exec(request.headers.get("authorization") ?? "") ?? [];
  return token ?? null;
}
