/** What the guide says in words of its own; what the core says of checks, figures and operations is not said again. */

import type { FigureName } from "../../engine/names";

/** How to gauge a bore: common practice, no source. */
export const GAUGING: readonly string[] = [
  "Drain and isolate the cylinder. Let it come to the heat of the shop, and wipe it clean and dry: oil counts as metal.",
  "Set the gauge on a micrometer or a ring of about the size, and read it there again when you have done.",
  "Gauge near the top of the ring's travel, in the middle and near the bottom. Ends that no ring reaches are no guide.",
  "At each height gauge along the crankshaft and across it: two directions at right angles are the least that shows an oval bore.",
  "Rock the gauge until the reading is smallest along the bore, and swing it until it is largest across.",
  "Write down what you read, not what you expect. Take each reading twice: what differs by more than the gauge's own doubt is taken again.",
  "Enter the readings under Survey. The ring is made for the place where it runs; a gap must still be open where the bore is smallest.",
];

export const GAPS: readonly string[] = [
  "Free gap: the ring lies on the bench and nothing holds it. It is wide, and gives the spring. It is measured along the ring, on the middle of its thickness.",
  "Closed gap, cold: the ring stands square in its bore in the shop. This is the gap you make and check.",
  "Closed gap, hot: what is left when ring and wall have their heat. It must stay open, or the ends butt and the ring breaks or scores the bore.",
  "Ends cut at 45 degrees: hold the feeler square to the cut. It then reads less than the gap along the ring, about seven tenths. The card gives what the feeler reads.",
  "Ends that were sawn parallel close at their outer edge first. A feeler reads that edge, so it reads a little less still.",
];

export const TWO_GAPS =
  "A double-turn ring has two gaps, one in each turn, on opposite sides of the bridge that joins the turns. Measure both; each has the size on the card.";

/** Entries with a picture, by topic. */
export const ARTICLES = { gauge: "How to gauge a bore", gaps: "Which gap is which" } as const;

/** The parts that hold many entries; the topic of an entry begins with the name of its part, less the "s". */
export const PARTS = {
  operations: "Operations of the card",
  checks: "What each check means",
  figures: "What each figure is",
  words: "Words of the trade",
} as const;

export type Article = keyof typeof ARTICLES;

/** Figures that an article explains. */
export const EXPLAINED: Readonly<Partial<Record<FigureName, Article>>> = {
  mean_diameter: "gauge",
  largest_diameter: "gauge",
  smallest_diameter: "gauge",
  taper: "gauge",
  bell_mouth: "gauge",
  ovality: "gauge",
  oval_direction: "gauge",
  misfit: "gauge",
  ring_diameter: "gauge",
  free_gap: "gaps",
  closed_gap: "gaps",
  closed_gap_hot: "gaps",
  closed_gap_reading: "gaps",
  feeler_gap: "gaps",
  clamped_gap: "gaps",
  clamped_gap_reading: "gaps",
  gap_steady: "gaps",
  gap_cold_start: "gaps",
};

/** The trade's words as they are meant here; common practice, no source. */
export const WORDS: Readonly<Record<string, string>> = {
  Band: "The metal on either side of the slit of a double-turn blank; each becomes a turn.",
  "Bell-mouth": "A bore that is wider at its ends than in the middle.",
  Blank: "The piece of tube, turned, bored and parted off, that becomes one ring.",
  Bore: "The inside of the cylinder, and its diameter.",
  Bridge: "The solid place that joins the two turns of a double-turn ring.",
  "Closing ring": "A bored ring that holds a sprung ring closed while it is clamped.",
  "Clamp mandrel": "A stub with a shoulder on which rings, closed, are gripped from the side to turn the outside.",
  "Cut-off": "The share of the stroke at which steam stops entering.",
  "Double-turn ring": "A ring of two turns in one piece, whose gaps lie on different sides.",
  "Expander": "A wavy spring strip, or a coil, behind a ring of little spring.",
  Former: "A round plug that holds the ring open while heat sets it.",
  Groove: "The slot in the piston that holds the ring.",
  "Heat set": "Held open and heated until part of the stress is gone, the ring stays open.",
  Kerf: "The width of the cut that a saw leaves.",
  Land: "The part of the piston between grooves or beyond them.",
  Light: "A place where the ring stands off the wall, seen with a lamp behind it.",
  "Neutral line": "The middle of the ring's thickness, whose length does not change when the ring is bent.",
  Ovality: "Largest less smallest diameter at one height.",
  Pot: "A bored cup that holds rings by their outside while the sides are faced.",
  "Saturated steam": "Steam just as it boils off the water, as hot as its pressure makes it.",
  Scarf: "An end cut at a slant, so that the two ends pass over one another.",
  Skin: "The hard, sandy outside of a casting.",
  Slit: "The cut round the blank that parts the two turns, all but the bridge.",
  Soak: "The time for which ring and former are kept hot.",
  Spacer: "A piece held in the gap to keep the ring open while heat sets it.",
  Spring: "The ring's own push outwards, against the wall.",
  "Stepped end": "Each end has a tongue half as wide as the ring; the two lie side by side.",
  "Stress relief": "The share of the stress that the soak takes out.",
  Superheat: "What steam is hotter than saturated steam of its pressure.",
  Taper: "A bore that widens from one end to the other.",
  Thou: "A thousandth of an inch, 0.0254 mm.",
  "To turn through": "To pass the free ends of a double-turn ring by one another, so that the ring is inside out.",
  "Wall pressure": "The push of the ring's own spring on each square millimetre of the wall.",
};

export function topicOfWord(word: string): string {
  return `word-${word.toLowerCase().replace(/ /g, "-")}`;
}
