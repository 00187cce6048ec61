/** Shorter than anybody feels [s] (common practice, no source): told as `at once`, since `0 s` reads like a number that is not known. */
const FELT = 0.05;

/** Whether something happens so soon that it is told in words, `at once`. */
export const isAtOnce = (seconds: number): boolean => seconds < FELT;
