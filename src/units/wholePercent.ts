/** A share as a person says it where tenths of a percent are not known: 0.294 is `29 %`. */
export const wholePercent = (share: number): string => `${Math.round(100 * share)} %`;
