import type { Page } from "playwright-core";

/** Gives a page an authenticator of its own, as built into a phone, whose holder is always there and always shows it. */
export async function giveAuthenticator(page: Page): Promise<void> {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("WebAuthn.enable");
  await devtools.send("WebAuthn.addVirtualAuthenticator", {
    options: {
      protocol: "ctap2",
      transport: "internal",
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    },
  });
}
