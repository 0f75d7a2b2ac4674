/** Jobs of older forms, brought up to the present one, a version at a time.
 *
 * Version 1 kept the unit of an input beside its number. Until version 2 one name could stand for two things;
 * since version 3 each has a name of its own, and what an old sheet holds goes to the one it meant. */

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** A job of that version as one of the present. What is no job at all is left as it is, to be refused. */
export function broughtUp(raw: Record<string, unknown>, version: unknown): Record<string, unknown> {
  if (typeof version !== "number" || !isRecord(raw.inputs)) return raw;
  let inputs = raw.inputs;
  if (version < 2) inputs = fromVersionOne(inputs);
  if (version < 3) inputs = fromVersionTwo(inputs);
  return { ...raw, inputs };
}

/** {"bore": {"number": "3 1/8", "unit": "in"}} becomes {"bore": "3 1/8 in"}. */
function fromVersionOne(old: Record<string, unknown>): Record<string, unknown> {
  const inputs: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(old)) {
    inputs[name] =
      isRecord(value) && typeof value.number === "string" && typeof value.unit === "string"
        ? `${value.number} ${value.unit}`.trim()
        : value;
  }
  return inputs;
}

/** What the piston valve calls otherwise than the rest of the sheet. */
const OF_THE_VALVE: Readonly<Record<string, string>> = { rings: "rings_on_piston", bars: "port_bars", bar_width: "port_bar_width" };

/** `rings` stays what it was on the ring's own screen, how many to make; those on a piston have their own name,
 * and are asked for anew. `back_pressure` stays the exhaust's; steam behind a ring is pressure_behind. */
function fromVersionTwo(old: Record<string, unknown>): Record<string, unknown> {
  const { back_pressure: back, ...inputs } = old;
  if (isRecord(inputs.piston_valve)) {
    inputs.piston_valve = Object.fromEntries(
      Object.entries(inputs.piston_valve).map(([name, value]) => [OF_THE_VALVE[name] ?? name, value]),
    );
  }
  if (back !== undefined) inputs[meantTheExhaust(old, back) ? "back_pressure" : "pressure_behind"] = back;
  return inputs;
}

/** Below nought only an exhaust can be. Else an exhaust was meant where an engine or a valve was being run, and
 * nothing else was said of the steam round the ring. */
function meantTheExhaust(old: Record<string, unknown>, back: unknown): boolean {
  if (typeof back === "string" && /^\s*[-\u2212]/.test(back)) return true;
  if (old.face_pressure !== undefined) return false;
  return old.stroke !== undefined || old.speed !== undefined || old.piston_valve !== undefined;
}
