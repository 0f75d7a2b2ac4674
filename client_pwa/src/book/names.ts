/** What a job is called when nobody has said: by the day, and by the engine once that is known. */

export function dayWords(time: number): string {
  return new Intl.DateTimeFormat(undefined, { dateStyle: "medium" }).format(time);
}

/** "Job of 3 May 2031", with a number where the book has one of that name. */
export function nameByDay(taken: readonly string[], now = Date.now()): string {
  return free(`Job of ${dayWords(now)}`, taken);
}

export function nameByEngine(engine: string, taken: readonly string[], now = Date.now()): string {
  const plain = engine.trim().slice(0, 80);
  return plain === "" ? nameByDay(taken, now) : free(`${plain}, ${dayWords(now)}`, taken);
}

function free(name: string, taken: readonly string[]): string {
  if (!taken.includes(name)) return name;
  let number = 2;
  while (taken.includes(`${name} (${number})`)) number += 1;
  return `${name} (${number})`;
}
