/** Minutes since midnight of a wall-clock time. @example minuteOfDay("08:15") // 495 */
export function minuteOfDay(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(":").map(Number);
  return hours * 60 + minutes;
}
