/** Whole numbers one over the other, to the nearest double: one rounding, at the end. */

/** A number as two whole ones, so that nothing is rounded on the way. */
export interface Ratio {
  over: bigint;
  under: bigint;
}

/** A double holds 53 binary digits; two more tell to which side a rest lies. */
const DIGITS = 55;

export function nearest({ over, under }: Ratio): number {
  if (over === 0n) return 0;
  const size = over < 0n ? -over : over;
  const shift = DIGITS + bits(under) - bits(size);
  const [above, below] = shift >= 0 ? [size << BigInt(shift), under] : [size, under << BigInt(-shift)];
  // What is left over only has to be more than nothing: it then pushes past a tie.
  const whole = (above / below) | (above % below === 0n ? 0n : 1n);
  const value = Number(whole) * 2 ** -shift;
  return over < 0n ? -value : value;
}

export function times(one: Ratio, other: Ratio): Ratio {
  return { over: one.over * other.over, under: one.under * other.under };
}

export function plus(one: Ratio, other: Ratio): Ratio {
  return { over: one.over * other.under + other.over * one.under, under: one.under * other.under };
}

function bits(whole: bigint): number {
  return whole.toString(2).length;
}
