/** What the page says while a photo is on its way; the browser's script reads nothing else of the messages for it. */
export const SENDING = {
  shrinking: "Making the photo smaller…",
  progress: (percent: number) => `Sending the photo: ${percent} %`,
  sent: "The photo is kept.",
  waiting: (count: number) =>
    count === 1
      ? "No network. The photo is kept on this device and sent as soon as there is one."
      : `No network. ${count} photos are kept on this device and sent as soon as there is one.`,
  notKept:
    "No network, and this browser cannot keep the photo. Leave this page open: it is sent as soon as there is one.",
  signIn: "The photo is kept on this device. Sign in again to send it.",
  failed: "The photo could not be sent. It is kept on this device and tried again.",
} as const;
