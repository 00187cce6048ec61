/** The numbers of flights that a person writes: `2, 5 6`; rising, each once. Undefined where it is no such list. */
export function flightList(text: string, most: number): readonly number[] | undefined {
  const words = text.split(/[\s,;]+/).filter((word) => word !== '');
  const numbers = words.map(Number);
  if (!numbers.every((each) => Number.isInteger(each) && each >= 1 && each <= most)) return undefined;
  return [...new Set(numbers)].sort((a, b) => a - b);
}
