import type { CrashNotes } from '../schema/crashLogFile.ts';
import type { FileData } from './buildData.ts';

/** A crash log as its file holds it: plain data for `yamlText` or JSON. `readCrashNotes` of it gives the same. */
export const crashLogData = ({ flights, crashedOn, money, broken }: CrashNotes): FileData => ({
  flights,
  crashedOn,
  ...(money === undefined ? {} : { money: `${money.amount.toFixed(2)} ${money.currency}` }),
  ...(broken === undefined ? {} : { broken }),
});
