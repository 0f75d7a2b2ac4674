/** Text in which frequent words stand as one or two bytes: what gzip leaves in the core's many names is
 * a tenth of it, since it remembers only the last 32 kB.
 *
 * Plain text is printable ASCII and line ends; every other byte but nought is a code. The first codes stand
 * for a word each, the last ones open a pair with one of 94 printable characters. Layout: the words, one a
 * line, a nought, the coded text. */

const PAIR_CODES = 14;
const FIRST_OF_PAIR = 33;
const SECONDS = 94;
const LINE_END = 10;

export const isPlain = (byte: number): boolean => byte === LINE_END || (byte >= 32 && byte <= 126);

const CODES: readonly number[] = Array.from({ length: 255 }, (_unused, index) => index + 1).filter((byte) => !isPlain(byte));
const SINGLES = CODES.length - PAIR_CODES;
export const MOST_WORDS = SINGLES + PAIR_CODES * SECONDS;

/** The bytes of the word with that number in the list. */
export function codeOf(number: number): number[] {
  if (number < SINGLES) return [CODES[number]!];
  const pair = number - SINGLES;
  return [CODES[SINGLES + Math.floor(pair / SECONDS)]!, FIRST_OF_PAIR + (pair % SECONDS)];
}

export function unpackWords(bytes: Uint8Array): string {
  const end = bytes.indexOf(0);
  const words = new TextDecoder().decode(bytes.subarray(0, end)).split("\n");
  const numberOf = new Map(CODES.map((byte, index) => [byte, index]));
  let text = "";
  for (let at = end + 1; at < bytes.length; at += 1) {
    const byte = bytes[at]!;
    const code = numberOf.get(byte);
    if (code === undefined) text += String.fromCharCode(byte);
    else if (code < SINGLES) text += words[code];
    else {
      at += 1;
      text += words[SINGLES + (code - SINGLES) * SECONDS + bytes[at]! - FIRST_OF_PAIR];
    }
  }
  return text;
}
