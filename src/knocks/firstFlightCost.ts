import type { CostGroup, CostLine } from './types.ts';

export interface FirstFlightCost {
  readonly lines: readonly (CostLine & {
    readonly owned: boolean;
    /** Count times unit price, whether owned or not [money]. */
    readonly cost: number;
  })[];
  /** What is left to pay by group, groups without lines left out [money]. */
  readonly byGroup: readonly { readonly group: CostGroup; readonly toPay: number; readonly worth: number }[];
  /** Without what is already owned [money]. */
  readonly toPay: number;
  /** As if nothing were owned [money]. */
  readonly worth: number;
  /** Share of what is left to pay that is not the aircraft itself, 0 to 1; 0 when nothing is to pay. */
  readonly besideTheAircraft: number;
}

const GROUPS: readonly CostGroup[] = ['aircraft', 'missing from the box', 'kit', 'spares', 'shipping'];

/**
 * The money before the first flight: the aircraft, what its boxes lack, the kit round it, the spares to
 * start with and shipping, less what is ticked as owned.
 *
 * @param owned ids of lines already owned
 * @throws RangeError for a negative price, a count that is not a whole number >= 0, or a doubled id
 */
export function firstFlightCost(lines: readonly CostLine[], owned: readonly string[] = []): FirstFlightCost {
  const ticked = new Set(owned);
  const seen = new Set<string>();
  const costed = lines.map((line) => {
    if (!(line.unitPrice >= 0))
      throw new RangeError(`unitPrice of ${line.id} must be 0 or more; found ${line.unitPrice}`);
    if (!(Number.isInteger(line.count) && line.count >= 0)) {
      throw new RangeError(`count of ${line.id} must be a whole number of at least 0; found ${line.count}`);
    }
    if (seen.has(line.id))
      throw new RangeError(`id must be told apart from every other; found ${line.id} twice`);
    seen.add(line.id);
    return { ...line, owned: ticked.has(line.id), cost: line.count * line.unitPrice };
  });
  const byGroup = GROUPS.flatMap((group) => {
    const ofGroup = costed.filter((line) => line.group === group);
    if (ofGroup.length === 0) return [];
    return [{ group, toPay: sum(ofGroup.filter((line) => !line.owned)), worth: sum(ofGroup) }];
  });
  const toPay = sum(costed.filter((line) => !line.owned));
  const aircraft = byGroup.find(({ group }) => group === 'aircraft')?.toPay ?? 0;
  return {
    lines: costed,
    byGroup,
    toPay,
    worth: sum(costed),
    besideTheAircraft: toPay > 0 ? (toPay - aircraft) / toPay : 0,
  };
}

const sum = (lines: readonly { readonly cost: number }[]): number =>
  lines.reduce((total, { cost }) => total + cost, 0);
