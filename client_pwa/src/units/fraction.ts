/** The nearest 64th of an inch, and how far off it is. */

export interface Fraction {
  /** "3 1/8", "1/64", "0". */
  text: string;
  /** The measure less the fraction, in inches. */
  error: number;
}

const PARTS = 64;

export function nearestFraction(inches: number): Fraction {
  const parts = Math.round(Math.abs(inches) * PARTS);
  const whole = Math.floor(parts / PARTS);
  let above = parts % PARTS;
  let below = PARTS;
  while (above > 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  const sign = inches < 0 && parts > 0 ? "-" : "";
  const text = above === 0 ? String(whole) : whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
  return { text: sign + text, error: Math.abs(inches) * PARTS === parts ? 0 : inches - (sign ? -1 : 1) * (parts / PARTS) };
}
