/** Shows a short message and has screen readers speak it; the region is there, empty, from the first page on. */
export function say(message: string): void {
  const said = document.getElementById("said");
  if (said !== null) said.textContent = message;
}
