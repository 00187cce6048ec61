/**
 * Units that sentences hold with a plain space before them. Not those that `restate` turns into other ones: there a
 * plain space says that a size is called so and stays.
 */
const UNIT = '%|C|V|mV|A|mA|W|mW|Wh|mAh|uF|px|Hz|kHz|MHz|GHz|dBi?|deg|s|ms|min|h|GBP|EUR|USD';
const NUMBER_AND_UNIT = new RegExp(`(?<=\\d) (?=(?:${UNIT})(?![\\w/]))`, 'g');
/** The printed size of a propeller or a screw: `5.1 x 3.6 x 3`, `M3 x 8`. */
const SIZE = /(?<=\d) x (?=\d)/g;

/** A sentence for the page, where no line ends between a number and its unit, nor inside a printed size. */
export const glued = (text: string): string =>
  text.replaceAll(NUMBER_AND_UNIT, '\u00a0').replaceAll(SIZE, '\u00a0x\u00a0');
