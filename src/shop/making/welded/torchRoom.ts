/** What is said of a torch's room at a joint, and by which words a joint names what takes it. Degrees round the tube. */

/** Less than the whole way round by less than this is rounding. */
const ROUNDING = 0.5;
/** What a joint calls the tube that it is of, beside the ids of others. */
export const OWN = 'this tube';

export const isAllRound = (free: number): boolean => free >= 360 - ROUNDING;

/** The others take room that the tube itself leaves. */
export const lessInPlace = (free: number, inPlace: number): boolean => inPlace < free - ROUNDING;

export const othersIn = (inTheWay: readonly string[]): string[] => inTheWay.filter((name) => name !== OWN);
