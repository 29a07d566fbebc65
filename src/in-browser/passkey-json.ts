/** What the worker sends; bytes are base64url, as in the options' JSON forms of Web Authentication Level 3, 5.1. */
export type OptionsJson = PublicKeyCredentialCreationOptionsJSON & PublicKeyCredentialRequestOptionsJSON;

/** Options for a new passkey; by hand where the browser does not read the JSON form itself. */
export function creationOptions(json: OptionsJson): PublicKeyCredentialCreationOptions {
  if (typeof PublicKeyCredential.parseCreationOptionsFromJSON === "function")
    return PublicKeyCredential.parseCreationOptionsFromJSON(json);
  return {
    rp: json.rp,
    user: { ...json.user, id: bytesOf(json.user.id) },
    challenge: bytesOf(json.challenge),
    pubKeyCredParams: json.pubKeyCredParams as PublicKeyCredentialParameters[],
    excludeCredentials: (json.excludeCredentials ?? []).map(({ id }) => ({ type: "public-key", id: bytesOf(id) })),
    authenticatorSelection: json.authenticatorSelection as AuthenticatorSelectionCriteria,
    attestation: "none",
    ...(json.timeout !== undefined && { timeout: json.timeout }),
  };
}

/** Options to show a passkey. */
export function requestOptions(json: OptionsJson): PublicKeyCredentialRequestOptions {
  if (typeof PublicKeyCredential.parseRequestOptionsFromJSON === "function")
    return PublicKeyCredential.parseRequestOptionsFromJSON(json);
  return {
    challenge: bytesOf(json.challenge),
    userVerification: "required",
    ...(json.rpId !== undefined && { rpId: json.rpId }),
    ...(json.timeout !== undefined && { timeout: json.timeout }),
  };
}

/** The browser's answer as text; by hand where it does not write the JSON form itself. */
export function answerText(credential: PublicKeyCredential): string {
  if (typeof credential.toJSON === "function") return JSON.stringify(credential.toJSON());
  const { id, type, rawId, response } = credential;
  return JSON.stringify({ id, type, rawId: textOf(rawId), response: responseJson(response) });
}

function responseJson(response: AuthenticatorResponse): Record<string, unknown> {
  const clientDataJSON = textOf(response.clientDataJSON);
  if (response instanceof AuthenticatorAttestationResponse) {
    return {
      clientDataJSON,
      authenticatorData: textOf(response.getAuthenticatorData()),
      publicKey: textOf(response.getPublicKey() ?? new ArrayBuffer()),
      publicKeyAlgorithm: response.getPublicKeyAlgorithm(),
      transports: response.getTransports(),
    };
  }
  const { authenticatorData, signature, userHandle } = response as AuthenticatorAssertionResponse;
  return {
    clientDataJSON,
    authenticatorData: textOf(authenticatorData),
    signature: textOf(signature),
    userHandle: textOf(userHandle ?? new ArrayBuffer()),
  };
}

function bytesOf(text: string): Uint8Array<ArrayBuffer> {
  const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
  return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
}

function textOf(bytes: ArrayBuffer): string {
  const binary = Array.from(new Uint8Array(bytes), (byte) => String.fromCharCode(byte)).join("");
  return btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}
